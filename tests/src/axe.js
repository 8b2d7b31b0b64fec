// The body of an async function: what axe-core finds on this page.
// A bar that stays in its place while the page scrolls lies over whatever is beneath it just now; for the check it scrolls along.
const bars = [...document.querySelectorAll("*")].filter((e) => ["fixed", "sticky"].includes(getComputedStyle(e).position));
bars.forEach((bar) => { bar.style.position = "static"; });
const result = await axe.run(document, {
  runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
});
bars.forEach((bar) => { bar.style.position = ""; });
return result.violations.map(({ id, help, nodes }) => ({ id, help, nodes: nodes.map((node) => `${node.html} ${node.failureSummary}`) }));
