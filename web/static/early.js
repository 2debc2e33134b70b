// Before the first paint: the theme last chosen. And in words, when this browser is too old for the rest.
// A classic script in the oldest manner: it must run where nothing else does.
(function () {
  try {
    var cookies = JSON.parse(localStorage.getItem("daybook-cookies")) || {};
    if (cookies.theme) document.documentElement.dataset.theme = cookies.theme;
  } catch (error) {
    // no storage: the device's own theme
  }

  function isModuleWorkerKnown() {
    var known = false;
    var options = {
      get type() {
        known = true;
        return "module";
      },
    };
    try {
      new Worker("http://[", options); // no such address: it fails, but only after the options have been read
    } catch (error) {
      // as meant
    }
    return known;
  }

  function sayTooOld() {
    document.getElementById("starting").hidden = true;
    document.getElementById("too-old").hidden = false;
  }

  var isEnough = "noModule" in document.createElement("script") && typeof WebAssembly === "object" && isModuleWorkerKnown();
  if (!isEnough) document.addEventListener("DOMContentLoaded", sayTooOld);
  // A script that this browser cannot even read.
  window.addEventListener("error", function (event) {
    if (event.error instanceof SyntaxError && !window.daybook) sayTooOld();
  });
})();
