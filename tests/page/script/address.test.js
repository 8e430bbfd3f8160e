import assert from "node:assert/strict";
import { test } from "node:test";

import { fragmentOf, keptIn } from "../../../tapmodel/report/page/script/src/live/address.js";

test("a job comes back from its address as it was", () => {
  const job = { designation: "Tr16x4 LH", "flutes.offset": -1.25, "shop.wires": ["1/16in", 2], name: "Spannfutter – ø" };
  const fragment = fragmentOf({ job, units: "both" });
  assert.match(fragment, /^#job=[\w-]+$/);
  assert.deepEqual(keptIn(fragment), { job, units: "both" });
});

test("units that are none are left to the job", () => {
  const fragment = fragmentOf({ job: { designation: "M10" }, units: "furlong" });
  assert.equal(keptIn(fragment).units, null);
});

test("what is no job's address is none", () => {
  const other = btoa(JSON.stringify({ job: ["M10"], units: null }));
  for (const fragment of ["", "#findings", "#job=", "#job=%%%", "#job=AAAA", `#job=${other}`, `#job=${"A".repeat(70000)}`])
    assert.equal(keptIn(fragment), null);
});
