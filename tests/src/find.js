// arguments: kind ("field" or "action"), name, the heading of the part to look in (null: the whole page). Answers the first visible
// one of that name, or { names } of those there are. A field's unit stands after its name and may be left out.
const [kind, wanted, part] = arguments;
const plain = (text) => (text || "").replace(/\s+/g, " ").trim();
const kinds = {
  field: "input:not([type=checkbox]):not([type=radio]):not([type=hidden]), select, textarea, [role=slider], [role=textbox]",
  action: "button, a[href], summary, input[type=checkbox], input[type=radio], [role=button], [role=radio], [role=checkbox]",
};
function name(element) {
  const by = element.getAttribute("aria-labelledby");
  if (by) return plain(by.split(/\s+/).map((id) => document.getElementById(id)?.textContent).join(" "));
  if (element.hasAttribute("aria-label")) return plain(element.getAttribute("aria-label"));
  if (element.labels?.length) return plain([...element.labels].map((label) => label.textContent).join(" "));
  return plain(element.textContent);
}
const heading = part && [...document.querySelectorAll("h1, h2, h3, h4, legend, summary")].find((h) => plain(h.textContent) === plain(part));
const root = part ? heading?.closest("section, fieldset, details, li, main") : document;
const visible = [...(root ? root.querySelectorAll(kinds[kind]) : [])].filter((element) =>
  element.checkVisibility({ checkVisibilityCSS: true }) || [...(element.labels || [])].some((label) => label.checkVisibility()));
const unit = (text) => text.startsWith(`${plain(wanted)}, `) && text.slice(plain(wanted).length + 2).split(" (")[0].split(" ").length <= 4;
const found = visible.find((element) => name(element) === plain(wanted)) || (kind === "field" && visible.find((element) => unit(name(element))));
if (!found) return { names: visible.map(name) };
// A check box drawn by its label is pressed on its label.
return found.checkVisibility({ checkVisibilityCSS: true }) ? found : found.labels[0];
