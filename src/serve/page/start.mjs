// The first page: the investigations there are.
import { ask, byId, make, showTrouble } from "./page.mjs";

const list = byId("rubrics", HTMLUListElement);
try {
  const { rubrics } = await ask("/api/rubrics");
  for (const { id, title } of rubrics) list.append(make("li", {}, make("a", { href: `/write?about=${encodeURIComponent(id)}` }, title)));
} catch (error) {
  showTrouble(byId("trouble", HTMLElement), error);
}
list.removeAttribute("aria-busy");
