export default {
  render({ model, el }) {
    el.classList.add("subs-text", "subs-sentences");
    const draw = () => {
      const buttons = [...el.querySelectorAll("button")];
      const held = buttons.indexOf(document.activeElement);
      el.replaceChildren();
      const items = model.get("items");
      const title = add(el, "h4", { tabindex: "-1" }, model.get("title"));
      if (model.get("note")) add(el, "p", { role: "status" }, model.get("note"));
      const list = add(el, "ul");
      items.forEach((one, i) => {
        const item = add(list, "li"), id = newId();
        if (one.action) {
          const button = add(item, "button", { type: "button", class: "jupyter-button", "aria-describedby": id }, one.action);
          button.addEventListener("click", () => model.send({ pressed: i, text: one.text }));
        }
        add(item, "span", { id }, one.text);
      });
      const empty = items.length === 0 && !model.get("note");
      el.hidden = empty && held < 0;
      title.addEventListener("blur", () => { el.hidden = empty; });
      // who pressed a button that is gone must not find the keys in the notebook's cells
      if (held >= 0) (el.querySelectorAll("button")[held] ?? el.querySelector("button") ?? title).focus();
    };
    for (const name of ["items", "title", "note"]) model.on(`change:${name}`, draw);
    draw();
    return keepKeys(el);
  },
};
