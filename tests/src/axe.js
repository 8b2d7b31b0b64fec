// The body of an async function: what axe-core finds on this page.
const result = await axe.run(document, {
  runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
});
return result.violations.map(({ id, help, nodes }) => ({ id, help, nodes: nodes.map((node) => `${node.html} ${node.failureSummary}`) }));
