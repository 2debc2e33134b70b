// The words that the build gives the scripts: written by `build.py test web` from web/script_words.py.
import { readFileSync } from "node:fs";

globalThis.WORDS = JSON.parse(readFileSync(new URL("../../../.build/words.json", import.meta.url), "utf-8"));
