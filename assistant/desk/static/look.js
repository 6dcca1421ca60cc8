// Sets the chosen colours before the page is drawn, and again when the button is pressed.
"use strict";

const THEMES = [["", "as the system", "Auto"], ["dark", "dark", "Dark"], ["light", "light", "Light"],
  ["contrast", "high contrast", "High"]];

function theme() {
  try {
    return Number(localStorage.getItem("theme") || 0) % THEMES.length;
  } catch {
    return 0; // a browser that keeps nothing
  }
}

function dress(button) {
  const [name, words, label] = THEMES[theme()];
  if (name) {
    document.documentElement.dataset.theme = name;
  } else {
    delete document.documentElement.dataset.theme;
  }
  if (button) {
    button.textContent = label;
    button.setAttribute("aria-label", `Colours: ${words} (${label})`);
  }
}

dress(null);
document.addEventListener("DOMContentLoaded", () => {
  const button = document.getElementById("theme");
  dress(button);
  button.addEventListener("click", () => {
    try {
      localStorage.setItem("theme", (theme() + 1) % THEMES.length);
    } catch {
      // nothing is kept; the page stays as it is
    }
    dress(button);
  });
});
