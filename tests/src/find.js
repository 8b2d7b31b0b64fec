// arguments: kind ("field" or "action"), name. Answers the first visible one of that name, or { names } of those there are.
const [kind, wanted] = arguments;
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
const visible = [...document.querySelectorAll(kinds[kind])].filter((element) =>
  element.checkVisibility({ checkVisibilityCSS: true }) || [...(element.labels || [])].some((label) => label.checkVisibility()));
const found = visible.find((element) => name(element) === plain(wanted));
if (!found) return { names: visible.map(name) };
// A check box drawn by its label is pressed on its label.
return found.checkVisibility({ checkVisibilityCSS: true }) ? found : found.labels[0];
