"use strict";
const slides = [...document.querySelectorAll(".slide")];
let at = Math.max(0, slides.findIndex((slide) => "#" + slide.id === location.hash));
const fit = () => {
  for (const slide of slides) {
    const stage = slide.querySelector(".stage");
    for (let size = 100; size >= 40; size -= 4) {
      stage.style.zoom = size / 100;
      if (slide.offsetHeight <= innerHeight + 1) break;
    }
  }
};
addEventListener("load", fit);
addEventListener("resize", fit);
const go = (to) => {
  at = Math.min(Math.max(to, 0), slides.length - 1);
  slides[at].scrollIntoView();
  slides[at].focus({ preventScroll: true });
  history.replaceState(null, "", "#" + slides[at].id);
};
const steps = { ArrowRight: 1, ArrowDown: 1, PageDown: 1, " ": 1, ArrowLeft: -1, ArrowUp: -1, PageUp: -1 };
addEventListener("keydown", (event) => {
  if (event.altKey || event.ctrlKey || event.metaKey) return;
  if (event.key in steps) go(at + steps[event.key]);
  else if (event.key === "Home") go(0);
  else if (event.key === "End") go(slides.length - 1);
  else return;
  event.preventDefault();
});
