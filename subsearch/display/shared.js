// Common to the panel's widgets: set before each of them, since a widget's script stands alone.

const add = (parent, tag, attributes = {}, text = "") => {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  made.textContent = text; // text from a supplier's list never becomes markup
  return parent.appendChild(made);
};

// The output of the cell, once the widget stands in it: `begin` gets it, and gives what ends there what it began.
const inOutput = (el, begin) => {
  let end = null;
  let tries = 60;
  const hook = () => {
    const host = el.closest(".jp-OutputArea-output") ?? el.closest(".jp-OutputArea");
    if (host) end = begin(host);
    else if (tries-- > 0) requestAnimationFrame(hook);
  };
  hook();
  return () => end?.();
};

// Keys typed into the panel's controls must not reach the notebook, where one letter inserts or deletes a cell.
const keepKeys = (el) => inOutput(el, (host) => {
  const leaves = (e) => e.ctrlKey || e.metaKey || e.altKey || ["Escape", "Tab"].includes(e.key) || (e.key === "Enter" && e.shiftKey);
  const stop = (e) => { if (!leaves(e)) e.stopPropagation(); };
  host.addEventListener("keydown", stop);
  return () => host.removeEventListener("keydown", stop);
});

// A control that is switched off or taken away while it has the keyboard loses it: the next one then gets it.
const keepFocus = (el) => inOutput(el, (host) => {
  let held = null, at = 0;
  const open = (one) => one.isConnected && !one.disabled && one.checkVisibility();
  const stops = () => [...host.querySelectorAll("button, input, select, summary, [tabindex='0']")].filter(open);
  const take = (e) => { held = e.target; at = Math.max(0, stops().indexOf(held)); };
  const leave = () => { if (held && open(held)) held = null; }; // the builder's own doing
  const mend = () => {
    if (!held || open(held)) return;
    held = null;
    const left = stops();
    left[Math.min(at, left.length - 1)]?.focus();
  };
  const watch = new MutationObserver(mend);
  host.addEventListener("focusin", take);
  host.addEventListener("focusout", leave);
  watch.observe(host, { subtree: true, childList: true, attributes: true, attributeFilter: ["disabled", "hidden", "style"] });
  return () => { host.removeEventListener("focusin", take); host.removeEventListener("focusout", leave); watch.disconnect(); };
});

// What stops the keys is one listener an output, however many widgets stand in it: stopping twice does no harm.
// Each widget runs this script anew, so the number alone would name the controls of two widgets alike.
const own = Math.random().toString(36).slice(2, 10);
let made = 0;
const newId = () => `subs-${own}-${(made += 1)}`;
