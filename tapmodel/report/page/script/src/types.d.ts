// What Python hands to the page: `tapmodel/report/view/`, a room or a file for each part. Texts come as the
// reader's units show them; numbers beside them are mm, degrees, N·m and mm².

export type Weight = "good" | "note" | "warning" | "error";

/** What a page is opened with. */
export interface PageData {
  /** Null where the design leaves no tap. */
  view: TapView | null;
  /** The packed mesh; null where none was made yet. */
  model: PackedModel | null;
  /** Gzip in base64 of `Section[]`, front to rear, for a page that stands alone. */
  stations: string | null;
  /** Null for a page that stands alone. */
  live: { job: Job; units: Units | null; measured?: string } | null;
}

export type Units = "mm" | "inch" | "both";

/** A job by the dotted names of its fields, "designation" among them; values as `--set` takes them. */
export type Job = Record<string, unknown>;

export interface TapView {
  name: string;
  title: string;
  under: string;
  hand: "right" | "left";
  units: Units;
  verdict: { weight: Weight; sign: string; text: string };
  /** The numbers that matter, in the order of the work. */
  first: Figure[];
  section: Section;
  frame: Frame;
  marks: EdgeMarks;
  /** What it does in the hole; null where it breaks a rule of its geometry. */
  chips: ChipsView | null;
  torque: TorqueView | null;
  rubbing: RubbingView | null;
  /** By which taps are compared. */
  figures: NamedFigure[];
  /** The gravest first. */
  findings: Found[];
  /** What can be changed; none on a page that stands alone. */
  fields: Group[];
  /** Another wherever the model, or a text on it, is another. */
  model: string;
}

/** A finding of the rules. */
export interface Found {
  code: string;
  weight: Weight;
  sign: string;
  said: string;
  /** The same with what to change. */
  what: string;
  numbers: string;
  source: string;
  /** Dotted name of what is judged. */
  field: string;
  cures: Remedy[];
}

export interface Remedy {
  text: string;
  /** What else is found then; empty for nothing. */
  cost: string;
  /** Laid over the job; null for a field that is given no more. */
  values: Job;
}

/** Controls that belong together. */
export interface Group {
  key: string;
  title: string;
  controls: Control[];
  ways: Way[];
}

/** A field of the job as it can be changed. */
export interface Control {
  field: string;
  label: string;
  kind: "number" | "words" | "text" | "flag";
  /** Beside the box; a bare number that is typed there has it. */
  unit: string;
  /** As the box shows it; empty for none. */
  value: string;
  state: "given" | "rule" | "follows" | "none";
  /** The rule that chose the value; empty where none did. */
  why: string;
  slider: { low: number; high: number; step: number } | null;
  options: { value: string; label: string }[];
  /** What the field means. */
  told: string;
  /** What the number is on the machine, where its sign does not say. */
  beside: string;
}

/** One of two ways to give the same thing. */
export interface Way {
  label: string;
  fields: string[];
  chosen: boolean;
  values: Job;
  /** What else is given with them, and why. */
  note: string;
}

/** What the rules would choose for a field that is given. */
export interface Recommended {
  value: string;
  why: string;
}

export interface Frame {
  /** Greatest radius of the tap [mm]. */
  reach: number;
  /** Of the tap, the greatest height of a section [mm]. */
  length: number;
}

/** x and y of a section [mm], y downwards. */
export type Place = [number, number];

/** What is marked on a section; paths and places as those of the section. */
export interface EdgeMarks {
  /** Heights between which edge, land and cutter hold [mm]. */
  heights: [number, number];
  /** At which sections of taps are compared [mm]. */
  standing: number;
  rake: { edge: Place; radial: Place; tangent: Place; out: Place; arc: string };
  land: { arc: string; edge: Place; heel: Place };
  cutter: { centre: Place; radius: number; axis: [Place, Place]; radial: [Place, Place] };
  /** Along the land, as far as nothing drops; empty for none. */
  margin: string;
  circles: { kind: "crest" | "core" | "drill"; diameter: number }[];
  /** An arrow, tail first. */
  turning: Place[];
  names: EdgeName[];
  /** A legend: kinds of line, and numbers without one (an empty kind). */
  lines: { kind: string; label: string; text: string }[];
}

export interface EdgeName {
  key: "rake" | "land" | "offset" | "drop";
  label: string;
  text: string;
  at: Place;
}

/** One line on a part of the tap. */
export interface Judged {
  weight: Weight;
  sign: string;
  text: string;
}

export interface Axis {
  title: string;
  low: number;
  high: number;
  ticks: { at: number; text: string }[];
}

export interface ChipsView {
  judged: Judged;
  axis: Axis;
  bars: { number: number; height: number; text: string }[];
  limits: { at: number; text: string; beyond: boolean }[];
}

export interface TorqueView {
  judged: Judged;
  axis: Axis;
  low: number;
  likely: number;
  high: number;
  text: string;
  levels: TorqueLevel[];
  course: CourseView;
}

export interface TorqueLevel {
  key: "stop" | "bears" | "yields" | "breaks";
  label: string;
  text: string;
  low: number;
  high: number;
  beyond: boolean;
}

export interface CourseView {
  text: string;
  depth: Axis;
  torque: Axis;
  way_in: TorqueWay;
  way_back: TorqueWay;
  stop: number;
  end: number;
}

export interface TorqueWay {
  depth: number[];
  low: number[];
  likely: number[];
  high: number[];
}

export interface RubbingView {
  judged: Judged;
  surfaces: RubbingSurface[];
  along: Axis;
  clearance: Axis;
  touches: number;
  touches_text: string;
}

export interface RubbingSurface {
  key: "crest" | "flank" | "chamfer";
  label: string;
  rubs: string;
  share: number;
  clear: string;
  binds: boolean;
  along: number[];
  clearance: number[];
}

export interface NamedFigure {
  key: string;
  label: string;
  text: string;
  value: number | null;
}

/** The answer of `chart`. */
export interface ChartView {
  field: string;
  label: string;
  start: string;
  end: string;
  /** Beside both. */
  unit: string;
  across: Axis;
  figures: Named[];
  /** A scale for each figure. */
  up: Axis[];
  rows: ChartRow[];
  zones: { first: number; last: number; text: string }[];
  /** Between two rows something is chosen anew: no line runs across. */
  jumps: { first: number; last: number; text: string }[];
  present: ChartRow;
  /** What each row has beside its own value; null for fields that it gives no more. */
  held: Job;
  note: string;
  fields: Named[];
  choices: Named[];
}

export interface Named {
  key: string;
  label: string;
}

export interface ChartRow {
  x: number;
  value: number | string;
  text: string;
  y: (number | null)[];
  texts: string[];
  broken: boolean;
}

/** Tables and lists of sentences, as the chapters of the papers have them. */
export interface ShownChapter {
  key: string;
  title: string;
  blocks: (string[] | { caption: string; head: string[]; lines: (string | string[])[][] })[];
}

export interface WiresView {
  judged: Judged | null;
  read: Pair[];
  compound: { head: string[]; lines: string[][] } | null;
  aims: Pair[];
  notes: string[];
}

export interface Pair {
  label: string;
  text: string;
}

export interface DividingView {
  on: string;
  ratio: number;
  text: string[];
  stations: { number: number; move: string; reached: string; off: string }[];
}

export interface MeasuredView {
  sizes: { key: string; label: string; aim: string; unit: string; judged: Judged | null; wrong: string }[];
  chapter: ShownChapter | null;
  notes: string[];
  wire_wrong: string;
}

/** What panels ask of the desk. */
export interface AtDesk {
  settled(): Promise<Job>;
  job: Job;
  units: Units | null;
  view: TapView | null;
  set(values: Job): Promise<unknown>;
  measured: string;
  fillMeasured(text: string): Promise<void>;
  unkept: boolean;
}

export interface Figure {
  key: string;
  label: string;
  /** With its unit. */
  text: string;
  /** Limits or what else belongs to it; empty for none. */
  beside: string;
}

/** The tap cut square to its axis, seen on the cutting end. */
export interface Section {
  /** From the front [mm]. */
  z: number;
  region: string;
  /** [mm²] */
  area: number;
  /** Path of an SVG drawing [mm], y downwards. */
  path: string;
}

/** A mesh with what is needed to show the tap, at work and in the making. Places are
 * `low + number * step` [mm]. Arrays stand one behind the other in the order of `lengths`, each
 * filled up to a multiple of four bytes. */
export interface ModelHead {
  caption: string;
  low: Vector;
  step: Vector;
  vertices: number;
  triangles: number;
  /** Between surfaces that meet at an angle; the last `fine` of them within the thread's profile. */
  edges: number;
  fine: number;
  /** [bytes] */
  lengths: Record<"places" | "normals" | "triangles" | "edges" | "kinds", number>;
  shape: TapShape;
  marks: Mark[];
  hole: InHole | null;
  mill: Milled;
  look: Look;
}

/** For a page that stands alone. */
export interface PackedModel extends ModelHead {
  /** Gzip in base64 of the arrays. */
  data: string;
}

export type Vector = [number, number, number];

/** Crest or root of a profile [mm]; `arc` is 0 for a flat. */
export interface Flat { half: number; radius: number; arc: number; centre: number; }

export interface Profile { crest: Flat; root: Flat; }

/** A tap in its right-hand frame [mm, rad]; `tapmodel/report/view/model/shape.py` tells each. */
export interface TapShape {
  hand: 1 | -1;
  pitch: number; lead: number; first_z: number;
  major: number; profile: Profile;
  lands: number; edge: number;
  centre: number; offset: number; ball: number;
  full_depth: number; runout: number;
  point: number; cone: number; thread_end: number;
  turned: [number, number][];
  shank: number; square: number; square_start: number; front_centre: number;
}

/** Points that are named, in the tap's own frame. */
export interface Mark {
  key: string;
  label: string;
  text: string;
  places: { at: Vector; facing: Vector }[];
}

export interface InHole {
  drill: number; depth: number; blind: boolean; way: number;
  before: Profile | null;
  told: string;
  chips: Chip[];
}

export interface Chip {
  number: number; land: number; z: number; radius: number; width: number; thickness: number;
  text: string;
}

export interface Milled { side: "right" | "left" | ""; told: string; ratio: number; stations: { name: string; move: string }[]; }

/** Colours (sRGB) and lamps; `tapmodel/report/view/model/look.py` tells each. */
export interface Look {
  turned: Vector; ground: Vector; plain: Vector; straw: Vector; cap: Vector; work: Vector;
  cutter: Vector; head: Vector; thin: Vector; thick: Vector;
  key: Vector; fill: Vector; key_strength: number; fill_strength: number;
  sky: Vector; floor: Vector; gleam: number; sharpness: number;
}

/** What the server answers where a request cannot be met. */
export interface Refusal {
  /** One sentence that names field, value and what is allowed. */
  message: string;
  /** Dotted; empty where no field of the job is to blame. */
  field: string;
  /** Whether it would be built if it were forced. */
  forceable?: boolean;
}

/** A kind of file that can be asked of a build. */
export interface KindOfFile {
  key: string;
  label: string;
  /** Whether the solid is built for it. */
  model: boolean;
}

/** What can be asked of a build, and the one that runs, on whatever page it was begun. */
export interface Offer {
  kinds: KindOfFile[];
  running: BuildTold | null;
}

/** How far a build is, or what came of it. */
export interface BuildTold {
  id: string;
  name: string;
  state: "running" | "done" | "failed" | "stopped";
  progress: { share: number; stage: string; time: string };
  made: Built | null;
  error?: Refusal;
}

export interface Built {
  verdict: string;
  /** What was looked at, and what was found; none without a solid. */
  rows: [string, string][];
  /** What could not be made, and why. */
  notes: string[];
  files: { name: string; size: string }[];
}
