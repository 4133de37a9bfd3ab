// A button that prints, where there is a script to do it; the browser's own menu does it anyway.
for (const button of document.querySelectorAll("[data-print]")) {
  button.hidden = false;
  button.addEventListener("click", () => window.print());
}
