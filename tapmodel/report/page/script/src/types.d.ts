// What Python hands to the page: `tapmodel/report/view/`, a file for each part. Texts come as the
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
  live: { job: Job; units: Units | null } | null;
}

export type Units = "mm" | "inch" | "both";

/** A job by the dotted names of its fields, "designation" among them; values as `--set` takes them. */
export type Job = Record<string, unknown>;

export interface TapView {
  name: string;
  title: string;
  hand: "right" | "left";
  units: Units;
  verdict: { weight: Weight; sign: string; text: string };
  /** The numbers that matter, in the order of the work. */
  first: Figure[];
  section: Section;
  frame: Frame;
  /** The gravest first. */
  findings: Found[];
  /** What can be changed; none on a page that stands alone. */
  fields: Group[];
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
}

/** One of two ways to give the same thing. */
export interface Way {
  label: string;
  fields: string[];
  chosen: boolean;
  values: Job;
}

/** What the rules would choose for a field that is given. */
export interface Recommended {
  value: string;
  why: string;
}

export interface Frame {
  /** Greatest radius of the tap [mm]. */
  reach: number;
  /** Diameters that are drawn as circles [mm]. */
  circles: number[];
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

/** Places are `low + number * step` [mm]. */
export interface PackedModel {
  caption: string;
  low: [number, number, number];
  step: [number, number, number];
  lengths: Record<"places" | "normals" | "triangles" | "edges", number>;
  /** Gzip in base64 of the parts, one behind the other in the order of `lengths`. */
  data: string;
}

/** What the server answers where a request cannot be met. */
export interface Refusal {
  /** One sentence that names field, value and what is allowed. */
  message: string;
  /** Dotted; empty where no field of the job is to blame. */
  field: string;
}
