/** A model as it comes, and as arrays. */

import { unpacked } from "../unpack.js";

/** @import {ModelHead, PackedModel} from "../types" */

/**
 * @typedef {object} Arrays
 * @property {Uint16Array<ArrayBuffer>} places
 * @property {Int16Array<ArrayBuffer>} normals
 * @property {Uint16Array<ArrayBuffer> | Uint32Array<ArrayBuffer>} triangles
 * @property {Uint16Array<ArrayBuffer> | Uint32Array<ArrayBuffer>} edges
 * @property {Uint8Array<ArrayBuffer>} kinds
 */

/** @typedef {{head: ModelHead, arrays: Arrays}} Loaded */

const SHORT = 65536;

/**
 * The arrays of a model, one behind the other, each filled up to four bytes.
 * @param {ModelHead} head
 * @param {ArrayBuffer} bytes
 * @param {number} from where they begin
 * @returns {Arrays}
 */
export function arraysOf(head, bytes, from) {
  /** @type {Record<string, number>} */
  const starts = {};
  for (const [name, length] of Object.entries(head.lengths)) {
    starts[name] = from;
    from += Math.ceil(length / 4) * 4;
  }
  const Numbers = head.vertices <= SHORT ? Uint16Array : Uint32Array;
  return {
    places: new Uint16Array(bytes, starts.places, 3 * head.vertices),
    normals: new Int16Array(bytes, starts.normals, 2 * head.vertices),
    triangles: new Numbers(bytes, starts.triangles, 3 * head.triangles),
    edges: new Numbers(bytes, starts.edges, 2 * head.edges),
    kinds: new Uint8Array(bytes, starts.kinds, head.vertices),
  };
}

/**
 * Of a page that stands alone.
 * @param {PackedModel} packed
 * @returns {Promise<Loaded>}
 */
export async function fromPage(packed) {
  return { head: packed, arrays: arraysOf(packed, await unpacked(packed.data), 0) };
}

/**
 * As the server sends it: length of the head, head, arrays.
 * @param {ArrayBuffer} bytes
 * @returns {Loaded}
 */
export function fromServer(bytes) {
  const length = new DataView(bytes).getUint32(0, true);
  /** @type {ModelHead} */
  const head = JSON.parse(new TextDecoder().decode(new Uint8Array(bytes, 4, length)));
  return { head, arrays: arraysOf(head, bytes, 4 + length) };
}

/**
 * Corners in mm.
 * @param {Loaded} model
 */
export function placesOf({ head, arrays }) {
  const out = new Float32Array(arrays.places.length);
  for (let n = 0; n < out.length; n++)
    out[n] = head.low[n % 3] + arrays.places[n] * head.step[n % 3];
  return out;
}

/**
 * Ends of the edges, six numbers each.
 * @param {Arrays} arrays
 */
export function edgeEnds({ places, edges }) {
  const out = new Uint16Array(3 * edges.length);
  for (let n = 0; n < edges.length; n++)
    for (let k = 0; k < 3; k++) out[3 * n + k] = places[3 * edges[n] + k];
  return out;
}

/**
 * The box that the model fills [mm].
 * @param {ModelHead} head
 */
export function boxOf({ low, step }) {
  return { low, high: low.map((v, k) => v + 65535 * step[k]) };
}
