/** Builds of the server. */

import assert from "node:assert/strict";
import { test } from "node:test";

import { addressOf } from "../../../tapmodel/report/page/script/src/live/builds.js";

test("the address of a file keeps its folders and no letter of its name gets lost", () => {
  assert.equal(addressOf("id", "small.step"), "build/id/files/small.step");
  assert.equal(addressOf("id", "drawings/my tap #1?.svg"), "build/id/files/drawings/my%20tap%20%231%3F.svg");
});
