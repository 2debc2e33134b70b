import gzip
import threading
from http.client import HTTPConnection

import pytest

from building.policy import CONTENT_SECURITY_POLICY
from building.running import Failed
from building.serving import open_server


@pytest.fixture(scope="module")
def port(tmp_path_factory):
    folder = tmp_path_factory.mktemp("site") / "dist"
    (folder / "assets").mkdir(parents=True)
    (folder.parent / "private.txt").write_text("private")
    (folder / "index.html").write_text("<p>start" * 100)
    (folder / "manifest.webmanifest").write_text("{}")
    (folder / "assets/engine-0.wasm").write_bytes(b"\0asm" * 100)
    server = open_server(folder, 0, "/kitchen/daybook")
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield server.server_port
    server.shutdown()
    server.server_close()


def get(port, path, **headers):
    connection = HTTPConnection("127.0.0.1", port, timeout=60)
    connection.request("GET", path, headers=headers)
    response = connection.getresponse()
    response.data = response.read()
    connection.close()
    return response


def test_the_folder_itself_is_the_page(port):
    assert get(port, "/kitchen/daybook/").data.startswith(b"<p>start")


@pytest.mark.parametrize(
    ("file", "kind"),
    [("manifest.webmanifest", "application/manifest+json"), ("assets/engine-0.wasm", "application/wasm")],
)
def test_each_file_has_its_type(port, file, kind):
    assert get(port, f"/kitchen/daybook/{file}").headers["Content-Type"] == kind


def test_the_policy_is_sent(port):
    assert get(port, "/kitchen/daybook/").headers["Content-Security-Policy"].startswith(CONTENT_SECURITY_POLICY)


def test_nobody_may_frame_the_page(port):
    assert "frame-ancestors 'none'" in get(port, "/kitchen/daybook/").headers["Content-Security-Policy"]


def test_a_file_with_a_hash_in_its_name_is_kept_for_good(port):
    assert "immutable" in get(port, "/kitchen/daybook/assets/engine-0.wasm").headers["Cache-Control"]


def test_the_page_is_asked_for_again_each_time(port):
    assert get(port, "/kitchen/daybook/").headers["Cache-Control"] == "no-cache"


def test_an_unchanged_file_is_not_sent_again(port):
    tag = get(port, "/kitchen/daybook/").headers["ETag"]
    assert get(port, "/kitchen/daybook/", **{"If-None-Match": tag}).status == 304


def test_text_travels_compressed_where_the_browser_takes_it(port):
    assert gzip.decompress(get(port, "/kitchen/daybook/", **{"Accept-Encoding": "gzip"}).data).startswith(b"<p>start")


@pytest.mark.parametrize(
    "path", ["/", "/kitchen/daybook/nothing", "/kitchen/daybook/../private.txt", "/kitchen/daybook/%2e%2e/private.txt"]
)
def test_what_is_not_there_is_not_found(port, path):
    assert get(port, path).status == 404


def test_a_page_that_is_not_there_leads_to_the_start(port):
    assert b'href="/kitchen/daybook/"' in get(port, "/kitchen/daybook/nothing").data


def test_a_taken_port_is_said_in_one_line(port, tmp_path):
    with pytest.raises(Failed, match="Try --port"):
        open_server(tmp_path, port)
