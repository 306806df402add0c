// What a careful eye sees on the page as it is now; each function gives back complaints.
// Contrast after WCAG 2.2, 1.4.3 and 1.4.11, from the colours that are rendered.
window.looking = (() => {
  const canvas = new OffscreenCanvas(1, 1).getContext("2d", { willReadFrequently: true });

  /** Any CSS colour → [r, g, b, a] with a in 0…1. */
  const known = new Map();
  function parse(colour) {
    if (!known.has(colour)) {
      canvas.clearRect(0, 0, 1, 1);
      canvas.fillStyle = colour;
      canvas.fillRect(0, 0, 1, 1);
      const [r, g, b, a] = canvas.getImageData(0, 0, 1, 1).data;
      known.set(colour, [r, g, b, a / 255]);
    }
    return known.get(colour);
  }

  const over = ([r, g, b, a], [R, G, B]) => [
    r * a + R * (1 - a),
    g * a + G * (1 - a),
    b * a + B * (1 - a),
    1,
  ];

  function luminance([r, g, b]) {
    const [R, G, B] = [r, g, b].map((v) => {
      const c = v / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * R + 0.7152 * G + 0.0722 * B;
  }

  function ratio(one, other) {
    const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b);
    return (high + 0.05) / (low + 0.05);
  }

  /** What lies under an element, its own background included. */
  function ground(element) {
    if (!element) return parse(getComputedStyle(document.documentElement).backgroundColor);
    const own = parse(getComputedStyle(element).backgroundColor);
    return own[3] === 1 ? own : over(own, ground(element.parentElement));
  }

  const opacity = (element) => {
    let product = 1;
    for (let up = element; up; up = up.parentElement) product *= getComputedStyle(up).opacity;
    return product;
  };

  const told = (element, words) => `${element.outerHTML.slice(0, 100).replaceAll("\n", " ")} ${words}`;
  const seen = (element) =>
    element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) &&
    !element.closest(".spoken, .skip, [aria-hidden=true] .mark");

  function text() {
    const complaints = [];
    let [worst, count] = [21, 0];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const element = node.parentElement;
      if (!node.data.trim() || !seen(element) || element.closest(":disabled, option, title, desc")) continue;
      const style = getComputedStyle(element);
      const inSvg = element instanceof SVGElement;
      const under = ground(inSvg ? element.closest("svg") : element);
      const [r, g, b, a] = parse(inSvg ? style.fill : style.color);
      const found = ratio(over([r, g, b, a * opacity(element)], under), under);
      const size = Number.parseFloat(style.fontSize);
      count += 1;
      const large = size >= 24 || (size >= 18.66 && style.fontWeight >= 700);
      if (!large) worst = Math.min(worst, found);
      if (found < (large ? 3 : 4.5)) complaints.push(told(element, `text ${found.toFixed(2)}`));
    }
    return { complaints, worst, count };
  }

  /** Borders of what is typed into or chosen, and the lines of charts that carry meaning. */
  function parts() {
    const complaints = [];
    let [worst, count] = [21, 0];
    const check = (element, colour, under, what) => {
      const found = ratio(over(colour, under), under);
      worst = Math.min(worst, found);
      count += 1;
      if (found < 3) complaints.push(told(element, `${what} ${found.toFixed(2)}`));
    };
    const edges = "input[type=text], select, textarea, .segments span, .chip";
    for (const element of document.querySelectorAll(edges)) {
      if (!seen(element) || element.matches(":disabled")) continue;
      const style = getComputedStyle(element);
      check(element, parse(style.borderBottomColor), ground(element.parentElement), "border");
    }
    // A patch shows a light's own colour, the band that of a wavelength, whatever it is; what
    // stands beside or under it says the same.
    const decoration = ".patch *, .pure, .grid, .sheet, .axes *, .tick, .locus *, marker, defs *, [stroke=none]";
    for (const element of document.querySelectorAll("main svg :is(path, line, polyline, circle, rect, polygon)")) {
      if (!seen(element) || element.matches(decoration)) continue;
      const style = getComputedStyle(element);
      const under = ground(element.closest("svg"));
      const [stroke, fill] = [style.stroke, style.fill].map((c) => (c === "none" ? [0, 0, 0, 0] : parse(c)));
      const best = [stroke, fill].map((c) => [c, ratio(over(c, under), under)]).sort((a, b) => b[1] - a[1])[0][0];
      check(element, best, under, "drawing");
    }
    return { complaints, worst, count };
  }

  const TOUCH = "button, .button, select, summary, input, textarea, a[href]";
  function targets() {
    return [...document.querySelectorAll(TOUCH)]
      .filter((e) => seen(e) || (e.type === "radio" && e.checkVisibility()))
      .filter((e) => !e.closest("p, td, li > span") || e.matches("button"))
      .map((e) => (["checkbox", "radio"].includes(e.type) ? (e.closest("label") ?? e) : e))
      .flatMap((e) => {
        const { width, height } = e.getBoundingClientRect();
        const least = e.matches(".main, .thumb a") ? 48 : 44;
        if (width >= least - 0.01 && height >= least - 0.01) return [];
        return [told(e, `${width.toFixed(1)}×${height.toFixed(1)}, not ${least}`)];
      });
  }

  /** Sideways scrolling, and words that are cut off by their own box. */
  function room() {
    const { scrollWidth, clientWidth } = document.documentElement;
    const complaints = [];
    if (scrollWidth > clientWidth) {
      const wide = [...document.querySelectorAll("main *")].filter((e) => {
        const { left, right } = e.getBoundingClientRect();
        return seen(e) && (right > clientWidth + 1 || left < -1);
      });
      complaints.push(`${scrollWidth} px wide: ${wide.slice(0, 3).map((e) => told(e, "")).join(" · ")}`);
    }
    for (const e of document.querySelectorAll("body *")) {
      if (e instanceof SVGElement || !seen(e) || e.matches("input, textarea, select, progress")) continue;
      const { overflowX, overflowY } = getComputedStyle(e);
      const cut =
        (overflowX !== "visible" && e.scrollWidth > e.clientWidth + 1 && !/auto|scroll/.test(overflowX)) ||
        (overflowY !== "visible" && e.scrollHeight > e.clientHeight + 1 && !/auto|scroll/.test(overflowY));
      if (cut) complaints.push(told(e, "is cut off"));
    }
    for (const e of document.querySelectorAll("button, .button, .chip, .segments span, .tag, h1, h2")) {
      if (seen(e) && e.scrollWidth > e.clientWidth + 1) complaints.push(told(e, "overflows"));
    }
    return complaints;
  }

  /** The main actions of a bar, and the places: in the lower half, without scrolling. */
  function reach() {
    return [...document.querySelectorAll(".bar .main:not(:disabled), .thumb a")].flatMap((e) => {
      const { top, bottom } = e.getBoundingClientRect();
      if (top >= innerHeight / 2 && bottom <= innerHeight) return [];
      return [told(e, `is at ${Math.round(top)} px, out of the thumb's reach`)];
    });
  }

  /** What moves although the person asked for less motion. */
  function motion() {
    const moving = document.getAnimations().map((one) => told(one.effect.target, "moves"));
    const { scrollBehavior } = getComputedStyle(document.documentElement);
    return scrollBehavior === "smooth" ? [...moving, "The page scrolls by itself"] : moving;
  }

  /** Whether what has the focus shows it and is not covered by the bars. */
  function focus() {
    const e = document.activeElement;
    if (!e || e === document.body) return [];
    // Of the parts inside a date, the browser shows the focus itself.
    if (e.matches("[type=date]:not(:focus-visible)")) return [];
    const complaints = [];
    const shown = e.matches(".file-button input, .segments input") ? e.nextElementSibling : e;
    const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(shown);
    const ring = outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2;
    const under = ground(shown.parentElement);
    if (!ring || ratio(over(parse(outlineColor), under), under) < 3) complaints.push(told(e, "shows no focus"));
    const { left, top, width, height } = e.getBoundingClientRect();
    const hit = document.elementFromPoint(left + width / 2, top + Math.min(height, 44) / 2);
    if (!hit || !(e.contains(hit) || hit.contains(e) || e.closest("label")?.contains(hit) || shown.contains(hit)))
      complaints.push(told(e, `is covered by ${hit ? hit.outerHTML.slice(0, 80) : "the edge"}`));
    return complaints;
  }

  return { text, parts, targets, room, reach, motion, focus };
})();
