"use strict";
// Wires events to the engine and puts what it returns in place. Computes no number; the bench lives in the engine.
(async () => {
  const find = (id) => document.getElementById(id);
  const starting = find("starting");
  let engine;
  try {
    engine = await startEngine();
  } catch (problem) {
    starting.textContent = problem.message;
    document.documentElement.dataset.engine = "failed";
    return;
  }

  const dark = matchMedia("(prefers-color-scheme: dark)");
  const figures = new Map();
  const inView = new Set();
  const typed = new Map();
  const LINK_PAUSE = 200; // milliseconds
  const JUMP_SETTLES = 2000; // milliseconds
  let frame = 0;
  let linkDue = 0;
  let lapDue = () => {};
  let letGo = () => {};

  /**
   * Puts one answer of the engine in place: changed fragments, values, marks of fields in error, labels, link.
   * The lap may then be due to be worked out anew.
   */
  function show(update, changesLap = true) {
    if (changesLap) lapDue();
    for (const [id, html] of update.html) {
      replace(find(id), html);
      if (id.startsWith("value-")) find(id.slice("value-".length)).setAttribute("aria-valuetext", find(id).textContent);
    }
    for (const [key, most] of update.most) find(key).max = most;
    for (const place of document.querySelectorAll("[data-base]")) {
      place.textContent = home() || "put this behind the address of the Remount page: ";
    }
    for (const [key, text] of update.values) find(key).value = text;
    for (const field of document.querySelectorAll("[data-field]")) {
      const wrong = update.wrong.includes(field.id);
      if (wrong) field.setAttribute("aria-invalid", "true");
      else field.removeAttribute("aria-invalid");
      if (wrong && field.closest("details")) field.closest("details").open = true;
    }
    for (const [picture, text] of update.labels) figures.get(picture).canvas.setAttribute("aria-label", text);
    const undo = document.querySelector("[data-act=undo]");
    if (document.activeElement === undo && !update.undo) find("bench").querySelector("input").focus();
    undo.disabled = !update.undo;
    if (update.link !== null) writeLink(update.link);
    repaint();
  }

  /**
   * Puts the link into the address once typing pauses: browsers take many milliseconds over it and refuse it when it comes
   * too often.
   */
  function writeLink(link) {
    clearTimeout(linkDue);
    linkDue = setTimeout(() => history.replaceState(null, "", "#" + link), LINK_PAUSE);
  }

  /** Brings content up to date, touching only what differs: folds, focus, scrolling and marked text stay as they are. */
  function replace(element, html) {
    const next = element.cloneNode();
    next.innerHTML = html;
    morph(element, next, {
      childrenOnly: true,
      onBeforeElUpdated(was, will) {
        if (was.isEqualNode(will)) return false;
        if (was.localName === "details") will.open = was.open;
        return true;
      },
    });
  }

  function paint(name) {
    const { plot, canvas } = figures.get(name);
    const width = plot.clientWidth;
    if (width === 0) return;
    const ratio = window.devicePixelRatio || 1;
    const height = engine.pictureHeight(name, width);
    canvas.width = Math.round(width * ratio);
    canvas.height = Math.round(height * ratio);
    canvas.style.height = height + "px";
    engine.paint(name, canvas, width, height, ratio, dark.matches);
    figures.get(name).fresh = true;
    if (plot.dataset.spot) look(name, engine.spotAgain(name, width, height, Number(plot.dataset.spot)));
  }

  function repaint() {
    for (const name of figures.keys()) figures.get(name).fresh = false;
    for (const name of inView) paint(name);
  }

  /** Shows which spot of a picture is being looked at, or none. */
  function look(name, spot) {
    const { plot, mark, reading } = figures.get(name);
    mark.hidden = !spot;
    if (!spot) {
      delete plot.dataset.spot;
      reading.textContent = reading.dataset.idle;
      return;
    }
    plot.dataset.spot = spot.index;
    for (const side of ["left", "top", "width", "height"]) mark.style[side] = spot[side] + "px";
    reading.textContent = spot.text;
  }

  /** Puts what is being looked at into its field; the drawing follows with the next frame. */
  function put(field, value) {
    if (find(field).value !== value) enter(field, value);
  }

  function furnish(figure) {
    const name = figure.dataset.picture;
    const plot = figure.querySelector(".plot");
    const caption = figure.querySelector("figcaption");
    caption.id = "caption-" + name;
    plot.tabIndex = 0;
    plot.setAttribute("role", "group");
    plot.setAttribute("aria-labelledby", caption.id);
    plot.setAttribute("aria-describedby", "keys");
    plot.innerHTML = '<canvas role="img"></canvas><div class="mark" hidden></div>';
    const foot = document.createElement("div");
    foot.className = "figure-foot";
    foot.innerHTML = '<output class="reading"></output><button type="button">Save as SVG</button>';
    figure.append(foot);
    const [canvas, mark] = plot.children;
    const [reading, save] = foot.children;
    reading.dataset.idle = "Point at the picture, touch it, or step through it with the arrow keys.";
    reading.textContent = reading.dataset.idle;
    figures.set(name, { plot, canvas, mark, reading, fresh: false });
    const size = () => [plot.clientWidth, canvas.clientHeight];
    const point = (event) => {
      const box = plot.getBoundingClientRect();
      const spot = engine.spotAt(name, ...size(), event.clientX - box.left, event.clientY - box.top);
      look(name, spot);
      if (spot?.puts) put(...spot.puts);
    };
    plot.addEventListener("pointermove", point);
    plot.addEventListener("pointerdown", point);
    plot.addEventListener("pointerleave", ({ pointerType }) => {
      if (pointerType !== "touch" && document.activeElement !== plot) look(name, null);
    });
    plot.addEventListener("blur", () => look(name, null));
    plot.addEventListener("keydown", (event) => {
      const spot = engine.spotByKey(name, ...size(), Number(plot.dataset.spot ?? -1), (event.shiftKey ? "Shift+" : "") + event.key);
      if (!spot) return;
      event.preventDefault();
      look(name, spot);
      if (spot.puts) put(...spot.puts);
    });
    save.setAttribute("aria-label", "Save as SVG: " + caption.querySelector("b").textContent);
    save.addEventListener("click", () => {
      const picture = new Blob([engine.pictureSvg(name, ...size())], { type: "image/svg+xml" });
      const link = document.createElement("a");
      link.href = URL.createObjectURL(picture);
      link.download = "remount-" + name + ".svg";
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 1000);
    });
    new IntersectionObserver(([entry]) => {
      if (entry.isIntersecting) {
        inView.add(name);
        if (!figures.get(name).fresh) paint(name);
      } else {
        inView.delete(name);
      }
    }, { rootMargin: "200px" }).observe(plot);
    new ResizeObserver(() => (inView.has(name) ? paint(name) : (figures.get(name).fresh = false))).observe(plot);
  }

  function flush() {
    cancelAnimationFrame(frame);
    frame = 0;
    const edits = [...typed];
    typed.clear();
    if (edits.length > 0) show(engine.edit(edits));
  }

  document.addEventListener("input", ({ target }) => {
    const { field, sets } = target.dataset;
    if (sets && target.value !== "") pick(target, sets);
    if (field) enter(field, target.value);
  });

  // Rows that show themselves in a picture when pointed at or stepped to with the arrow keys.
  for (const event of ["pointerover", "focusin"]) {
    document.addEventListener(event, ({ target }) => {
      const row = target.closest("[data-puts]");
      if (row) put(row.dataset.puts, row.dataset.value);
    });
  }
  document.addEventListener("keydown", (event) => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    const rows = step && event.target.closest(".scroll, [data-puts]")?.closest(".scroll")?.querySelectorAll("[data-puts]");
    if (!rows?.length) return;
    event.preventDefault();
    const here = [...rows].indexOf(event.target);
    rows[Math.max(0, Math.min(rows.length - 1, here + (here < 0 ? 1 : step)))].focus();
  });

  // A slider changes with every step of a run along it, which undo takes back as one.
  document.addEventListener("change", ({ target }) => {
    if (typed.size > 0) flush();
    if (target.type !== "range") engine.pause();
  });

  function enter(field, text) {
    typed.set(field, text);
    frame ||= requestAnimationFrame(flush);
  }

  /** A ready-made value goes into its field. */
  function pick(list, field) {
    engine.pause();
    find(field).value = list.value;
    enter(field, list.value);
    list.value = "";
  }

  document.addEventListener("click", async ({ target }) => {
    const act = target.closest("[data-act]")?.dataset.act;
    if (act === "share") await share();
    else if (act === "print") print();
    else if (act === "print-bench") printBench();
    else if (act === "copy-sheet") await copySheet();
    else if (act) {
      flush();
      show(engine.act(act));
      // Such a button is gone when it is done: on with the field that it was about.
      find(/^(?:mine|put):([^=]*)/.exec(act)?.[1])?.focus();
    }
  });

  async function share() {
    try {
      await navigator.clipboard.writeText(location.href.split("#")[0] + "#" + engine.link());
      find("shared").textContent = "The link is on your clipboard.";
    } catch {
      find("shared").textContent = "Copy the address from the address bar: it holds the whole bench.";
    }
  }

  /** What is printed is the workshop sheet, unless this asks for the bench table of the chain once. */
  function printBench() {
    document.documentElement.dataset.print = "bench";
    print();
  }
  addEventListener("afterprint", () => delete document.documentElement.dataset.print);

  /** The page's address without the bench; a file on this machine is no address for anybody else. */
  const home = () => (location.protocol === "file:" ? "" : location.href.split("#")[0]);

  /** The sheet as it stands on the page, as plain text for a message. */
  function sheetAsText() {
    const words = (element) => element.textContent.trim();
    const line = (element) => {
      if (element.matches("h4")) return "- " + words(element) + " -";
      if (element.matches("h3")) return "\n= " + words(element) + " =";
      if (element.matches("dl > div")) return [...element.children].map((part) => words(part) || "____").join(": ");
      if (element.matches("tr")) return "  " + [...element.cells].map(words).join(" | ");
      return (element.matches(".ticked li") ? "[ ] " : "") + words(element);
    };
    const lines = find("sheet-page").querySelectorAll("header p:not(.blanks), h3, h4, dl > div, caption, tr, li, p.doubt, footer p");
    return [...lines].map(line).join("\n");
  }

  async function copySheet() {
    const text = sheetAsText();
    const box = find("sheet-text");
    try {
      await navigator.clipboard.writeText(text);
      box.hidden = true;
      find("sheet-copied").textContent = "The sheet is on your clipboard: paste it into a message.";
    } catch {
      box.value = text;
      box.hidden = false;
      box.focus();
      box.select();
      find("sheet-copied").textContent = "This browser keeps the clipboard to itself: copy the marked text below.";
    }
  }

  /** The section or field that an address on this page names, if it names one; else it holds a bench. */
  function place(hash) {
    const element = find(hash.slice(1));
    return element?.matches("main > section, main h3, #bench, [data-field]") ? element : null;
  }
  /** Brings an element to the top and keeps it there while what stands above it gets its height, unless the user moves on. */
  function jump(element) {
    letGo();
    element.scrollIntoView();
    const growing = new ResizeObserver(() => element.scrollIntoView());
    growing.observe(document.querySelector("main"));
    letGo = () => growing.disconnect();
    setTimeout(letGo, JUMP_SETTLES);
  }
  for (const act of ["wheel", "touchstart", "pointerdown", "keydown"]) addEventListener(act, () => letGo(), { passive: true });
  addEventListener("hashchange", () => {
    if (place(location.hash)) return;
    clearTimeout(linkDue);
    typed.clear();
    show(engine.open(location.hash));
  });
  document.addEventListener("click", (event) => {
    const target = place(event.target.closest("a[href^='#']")?.getAttribute("href") ?? "");
    if (!target) return;
    event.preventDefault();
    const isField = target.matches("[data-field]");
    for (let fold = target.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
    jump(isField ? target.closest(".field") : target);
    if (!isField) target.tabIndex = -1;
    target.focus({ preventScroll: true });
  });

  dark.addEventListener("change", repaint);
  (function watchRatio() {
    matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`).addEventListener("change", () => {
      repaint();
      watchRatio();
    }, { once: true });
  })();

  for (const section of document.querySelectorAll("main > section")) section.hidden = false;
  document.querySelectorAll("[data-picture]").forEach(furnish);
  starting.remove();
  for (const form of document.querySelectorAll("[data-form]")) form.innerHTML = engine.formHtml(form.dataset.form);
  lapDue = roundTheLap(engine, show);
  find("more").open = matchMedia("(width > 60rem)").matches;
  const start = place(location.hash);
  show(engine.open(start ? "" : location.hash));
  if (start) jump(start);
  document.documentElement.dataset.engine = "ready";
})();
