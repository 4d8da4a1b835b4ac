// Light or dark as the reader chose it, before anything is painted.
const chosen = localStorage.getItem("light");
if (chosen) document.documentElement.dataset.light = chosen;
