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
