const PAUSE_MS = 250; // a text is read once the typing pauses; a slider is followed

export default {
  render({ model, el }) {
    el.classList.add("subs-form");
    let timer = null;
    let inputs = {}; // by name: the control, its slider if it has one, and the line for its fault
    const touched = new Set(); // what the builder changed and is not sent yet: only that is sent, and nothing is set over it

    const send = () => {
      clearTimeout(timer);
      timer = null;
      const values = { ...model.get("values") };
      for (const name of touched) if (inputs[name]) values[name] = read(inputs[name].input);
      touched.clear();
      model.set("values", values);
      model.save_changes();
    };
    const soon = () => { clearTimeout(timer); timer = setTimeout(send, PAUSE_MS); };
    const read = (input) => (input.type === "checkbox" ? (input.checked ? "yes" : "") : input.value);

    const slide = (one, text) => {
      const number = /^\s*(-?\d+(?:[.,]\d+)?)\s*\D*$/.exec(text.replace("−", "-"));
      const known = number !== null && (text.includes(one.unit) || /[\d]\s*$/.test(text));
      one.slider.classList.toggle("subs-unasked", !known);
      one.slider.setAttribute("aria-valuetext", text.trim() === "" ? "not asked" : text);
      if (known) one.slider.value = number[1].replace(",", ".");
    };
    const same = (text, other) => text.trim().toLowerCase() === other.toLowerCase();
    const pickOne = (select, text) => {
      const known = [...select.options].find((option) => same(text, option.value));
      select.value = (known ?? add(select, "option", { value: text }, text)).value; // what is recorded is never hidden
    };
    const show = (one, text) => {
      const input = one.input;
      if (input.type === "checkbox") input.checked = same(text, "yes");
      else if (input.tagName === "SELECT") pickOne(input, text);
      else if (input.value !== text) input.value = text;
      if (one.slider) slide(one, text);
    };
    const shown = (name) => { if (!touched.has(name)) show(inputs[name], model.get("values")[name] ?? ""); };
    const written = (one) => one.input === document.activeElement && one.input.type === "text"; // shown when it is left
    const showAll = () => { for (const [name, one] of Object.entries(inputs)) if (!written(one)) shown(name); };
    const say = () => {
      const faults = model.get("faults");
      for (const [name, one] of Object.entries(inputs)) {
        const fault = faults[name] ?? "";
        if (one.fault.textContent !== fault) one.fault.textContent = fault;
        if (fault) one.input.setAttribute("aria-invalid", "true");
        else one.input.removeAttribute("aria-invalid");
        if (fault) one.group.open = true; // a fault must not hide
      }
    };

    const choice = (row, control, id) => {
      const select = add(row, "select", { id });
      for (const option of control.options) {
        const [value, label] = Array.isArray(option) ? option : [option, option];
        add(select, "option", { value }, label);
      }
      return select;
    };
    const measure = (row, control, one) => {
      const slider = add(row, "input", { type: "range", min: control.low, max: control.high, step: control.step, "aria-label": `${control.label}, slider` });
      one.slider = slider;
      one.unit = control.unit;
      slider.addEventListener("input", () => {
        one.input.value = `${Number(slider.value)} ${control.unit}`.trim();
        slide(one, one.input.value);
        touched.add(control.name);
        send();
      });
    };
    const make = (group, control) => {
      const id = newId(), row = add(group, "div", { class: `subs-control subs-${control.kind}` });
      const one = { group, slider: null, unit: "" };
      const unit = control.unit ? ` [${control.unit}]` : "";
      const label = add(row, "label", { for: id }, control.label + unit);
      if (control.kind === "choice") one.input = choice(row, control, id);
      else if (control.kind === "yes") one.input = add(row, "input", { id, type: "checkbox" });
      else one.input = add(row, "input", { id, type: "text", placeholder: control.kind === "measure" ? "not said" : control.hint, autocomplete: "off", spellcheck: "false" });
      if (control.kind === "measure") measure(row, control, one);
      one.input.title = label.title = control.hint;
      const hint = add(row, "span", { id: `${id}-hint`, class: control.kind === "yes" ? "" : "subs-unseen" }, control.hint);
      one.fault = add(row, "div", { id: `${id}-fault`, class: "subs-fault" });
      one.input.setAttribute("aria-describedby", `${hint.id} ${one.fault.id}`);
      const typed = control.kind === "text" || control.kind === "measure";
      one.input.addEventListener("input", () => {
        touched.add(control.name);
        if (one.slider) slide(one, one.input.value);
        if (typed) soon(); else send();
      });
      one.input.addEventListener("blur", () => { if (inputs[control.name] === one) shown(control.name); });
      one.input.addEventListener("change", () => { if (timer) send(); });
      one.input.addEventListener("keydown", (e) => { if (typed && e.key === "Enter" && !e.shiftKey) send(); });
      inputs[control.name] = one;
    };
    const draw = () => {
      const held = Object.keys(inputs).find((name) => inputs[name].input === document.activeElement);
      const caret = held && inputs[held].input.type === "text" ? [inputs[held].input.selectionStart, inputs[held].input.selectionEnd] : null;
      const unsent = [...touched].map((name) => [name, read(inputs[name].input)]);
      const shut = new Map([...el.querySelectorAll("details")].map((one) => [one.dataset.title, one.open]));
      inputs = {};
      el.replaceChildren();
      for (const one of model.get("groups")) {
        const group = add(el, "details", { "data-title": one.title });
        group.open = shut.get(one.title) ?? one.open;
        add(group, "summary", {}, one.title);
        for (const control of one.controls) make(group, control);
      }
      showAll();
      for (const [name, text] of unsent) if (inputs[name]) show(inputs[name], text); // typed meanwhile
      say();
      if (held) inputs[held]?.input.focus();
      if (caret) inputs[held]?.input.setSelectionRange(...caret);
    };
    model.on("change:groups", draw);
    model.on("change:values", showAll);
    model.on("change:faults", say);
    draw();
    const ends = [keepKeys(el), keepFocus(el)];
    return () => ends.forEach((end) => end());
  },
};
