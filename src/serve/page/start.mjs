// The first page: the investigations there are.
import { allRubrics, byId, make, showTrouble } from "./page.mjs";

const list = byId("rubrics", HTMLUListElement);
const short = byId("questions", HTMLUListElement);
try {
  for (const { id, title, points } of await allRubrics()) (points ? short : list).append(make("li", {}, make("a", { href: `/write?about=${encodeURIComponent(id)}` }, title)));
} catch (error) {
  showTrouble(byId("trouble", HTMLElement), error);
}
byId("short", HTMLElement).hidden = !short.hasChildNodes();
list.removeAttribute("aria-busy");
