export default {
  render({ model, el }) {
    el.classList.add("subs-answer");
    const alert = add(el, "div", { role: "alert", class: "subs-alert" });
    const status = add(el, "div", { role: "status", class: "subs-status" });
    const frame = add(el, "div", { class: "subs-frame" });
    const grid = add(frame, "table", { role: "grid", "aria-multiselectable": "true", "aria-label": "Parts found, best first" });
    const head = add(grid, "thead"), body = add(grid, "tbody");
    const help = "Arrow keys move, Enter looks at a part, space picks it to compare, Esc picks none. * at a score: nothing that fits beats it in room, life and cost.";
    const keys = add(el, "div", { class: "subs-help" }, help);
    let at = 0;

    const rows = () => [...body.children];
    const save = (name, value) => { model.set(name, value); model.save_changes(); };
    const look = (row) => save("looked_at", row.dataset.id);
    const pick = (row) => {
      const picked = model.get("picked"), id = row.dataset.id;
      save("picked", picked.includes(id) ? picked.filter((one) => one !== id) : [...picked, id]);
    };
    const move = (to, focus = true) => {
      const all = rows();
      at = Math.max(0, Math.min(to, all.length - 1));
      all.forEach((row, i) => { row.tabIndex = i === at ? 0 : -1; });
      if (focus) all[at]?.focus();
    };
    const mark = () => {
      for (const row of rows()) {
        const picked = model.get("picked").includes(row.dataset.id);
        row.setAttribute("aria-selected", picked);
        row.firstChild.textContent = picked ? "☑" : "☐";
        if (row.dataset.id === model.get("looked_at")) row.setAttribute("aria-current", "true");
        else row.removeAttribute("aria-current");
      }
    };
    const say = () => {
      const alarm = model.get("alert");
      status.textContent = model.get("status");
      if (alert.textContent === alarm) return;
      alert.textContent = alarm;
      // a button that is pressed may stand where the alert is out of sight; who types is not to be moved away
      if (alarm && document.activeElement?.closest(".subs-panel") && !document.activeElement.closest(".subs-form")) alert.scrollIntoView({ block: "nearest" });
    };
    const uncover = () => { // the part that is followed through searches may stand further down, or up again
      const row = body.querySelector("[aria-current]");
      if (!row) return;
      const over = row.offsetTop - head.offsetHeight - frame.scrollTop, under = row.offsetTop + row.offsetHeight - frame.scrollTop - frame.clientHeight;
      if (over < 0) frame.scrollTop += over;
      else if (under > 0) frame.scrollTop += under;
    };
    const draw = () => {
      const held = body.contains(document.activeElement), columns = model.get("columns");
      head.replaceChildren();
      body.replaceChildren();
      const top = add(head, "tr", { role: "row" });
      add(top, "th", { role: "columnheader", title: "Picked to compare" }, "Pick");
      for (const one of columns) add(top, "th", { role: "columnheader", class: one.right ? "subs-right" : "" }, one.label);
      for (const one of model.get("rows")) {
        const row = add(body, "tr", { role: "row", "data-id": one.id, "data-lm-suppress-shortcuts": "true" });
        if (one.open) row.classList.add("subs-open");
        add(row, "td", { role: "gridcell", class: "subs-pick" });
        one.cells.forEach((cell, i) => add(row, "td", { role: "gridcell", class: columns[i].right ? "subs-right" : "" }, cell));
      }
      frame.hidden = keys.hidden = rows().length === 0;
      mark();
      move(at, held);
      uncover();
    };

    body.addEventListener("click", (e) => {
      const row = e.target.closest("tr");
      move(rows().indexOf(row));
      if (e.target.classList.contains("subs-pick")) pick(row);
      else look(row);
    });
    body.addEventListener("focusin", (e) => move(rows().indexOf(e.target.closest("tr")), false));
    body.addEventListener("keydown", (e) => {
      const to = { ArrowDown: at + 1, ArrowUp: at - 1, PageDown: at + 10, PageUp: at - 10, Home: 0, End: 1e9 }[e.key];
      if (to !== undefined) move(to);
      else if (e.key === " ") pick(rows()[at]);
      else if (e.key === "Enter" && !e.shiftKey) look(rows()[at]);
      else if (e.key === "Escape") save("picked", []);
      else return;
      e.preventDefault();
      e.stopPropagation();
    });
    model.on("change:rows", draw);
    model.on("change:picked", mark);
    model.on("change:looked_at", () => { mark(); uncover(); });
    model.on("change:alert", say);
    model.on("change:status", say);
    draw();
    say();
    return keepKeys(el);
  },
};
