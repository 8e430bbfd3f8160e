/** What rules choose anew with another value. */

import assert from "node:assert/strict";
import { test } from "node:test";

import { changes } from "../../../tapmodel/report/page/script/src/panels/shell/anew.js";

const cutter = (value, state = "rule") => ({ field: "flutes.cutter_diameter", label: "cutter", value, unit: "mm", state });

test("only what rules chose before and now, and not alike, is told", () => {
  const told = (before, now) => changes([before], [now]);
  assert.deepEqual(told(cutter("8"), cutter("10")), ["cutter 10\u00a0mm instead of 8\u00a0mm"]);
  assert.deepEqual(told(cutter("8"), cutter("8")), []);
  assert.deepEqual(told(cutter("8", "given"), cutter("10")), []);
  assert.deepEqual(told(cutter("8"), cutter("10", "given")), []);
});
