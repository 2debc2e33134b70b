// The words that the files here have in common, for the reader and for tsc; and what is given in from outside.

// by building/site.py
declare const ASSETS: Record<string, string>;
declare const SIZES: Record<string, number>;
declare const PRECACHE: { url: string; revision: string | null; integrity: string }[];
declare const BUILD_ID: string;
/** By language and key. */
declare const WORDS: Record<string, Record<string, string>>;

declare module "pyodide/pyodide.asm.mjs" {
  type Options = NonNullable<Parameters<typeof import("pyodide").loadPyodide>[0]>;
  const createPyodideModule: NonNullable<Options["createPyodideModule"]>;
  export default createPyodideModule;
}

// the page and the worker
interface Window {
  daybook: { ready: Promise<void>; send: Send; marks?: Record<string, number>; startedInMs?: number };
}
type Bytes = Uint8Array<ArrayBuffer>;
type Header = [name: string, value: string];
type Head = Record<string, string>;
type Form = URLSearchParams | FormData | null;
type Send = (
  url: string,
  request?: { method?: string; headers?: Head; body?: Form; signal?: AbortSignal },
) => Promise<Response>;
/** What is asked of the application. refused: why the last try could not be stored. */
type Asking = { method: string; path: string; headers: Head; body: Bytes; refused?: string };
type StoredFile = { sha: string; bytes: Bytes };
type Entry = { id: string };
type StoredEntry = { id: string; seq: number; entry: Entry };
type Tables = {
  entries: { key: string; value: StoredEntry; indexes: { seq: number } };
  files: { key: string; value: StoredFile };
};
type Table<Name extends keyof Tables> = import("idb").IDBPObjectStore<Tables, (keyof Tables)[], Name, "readwrite">;
type Database = import("idb").IDBPDatabase<Tables>;
/** What the application says. wants: the name of a file without which it can say nothing. */
type Said = { status: number; headers: Header[]; body: Bytes; entries: Entry[]; files: StoredFile[]; wants?: string };
/** saved: how many of its entries are new on the disk. */
type Stored = Said & { saved: number };
/** What the page is told. path: where the redirects led to. saved: how many entries are new on the disk. */
type Answer = { status: number; headers: Header[]; body: Bytes; path: string; saved: number };
/** Of the page: who waits for the answer. */
type Waiting = Omit<Asking, "body"> & { resolve: (response: Response) => void; reject: (error: unknown) => void };
type Part = { json: string; last: number };
type Host = ReturnType<typeof import("./host.js").hostOf>;
type Journal = ReturnType<typeof import("./journal.js").openJournal>;
/** Of a start, by their logical names. */
type Files = Record<string, Promise<Response>>;
type RawFiles = Omit<ReturnType<typeof import("./journal.js").openFiles>, "close">;
type Notice = { text: string; detail?: string; button?: string; act?: () => void };
type Progress = { phase: "files" | "python" | "journal"; done: number; total: number };
/** fresh: what the form held before anybody typed. texts: by the names of its boxes. */
type Draft = { at: number; fresh: string; texts: [name: string, text: string][] };
/** A box that is typed into: of the three kinds each has what the code asks of it, or undefined. */
type Field = HTMLInputElement;
/** htmx's, as far as it is used here. */
type Swap = {
  ctx: { request: { method: string; headers: Head }; response: { raw: Response }; sourceElement: Element; fetch: Send };
  tasks: { type: string; swapSpec: { show: string } }[];
};
type Morph = { oldNode: Element; newNode: Field };

// the chart of a log; moments and lengths of time in seconds
type View = { from: number; to: number };
/** label: what its line is called. */
type Column = { name: string; label: string; quantity: string; unit: string; values: Float32Array };
type Band = { quantity: string; low: number; high: number };
type Mark = { kind: string; from: number; to?: number; words: string };
/** titles: of the panels, by their units. */
type Log = { headline: string; titles: Record<string, string>; bands: Band[]; marks: Mark[]; times: Float64Array; columns: Column[] };
type Ink = Record<string, string>;
type Stroke = { colour: string; dash: number[] };
type Label = { words: string; colour: string; y: number };
type Shared = { ink: Ink; right: number; strokeOf: (column: Column) => Stroke };
type Place = { isFirst: boolean; isLast: boolean; height: number; width: number };
type Parts = Record<"buttons" | "sight" | "means" | "readout" | "slider" | "line", HTMLElement>;
type Moves = ReturnType<typeof import("./chart/moves.js").openMoves>;
