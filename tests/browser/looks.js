/* What can be measured of a page that is drawn: each function gives a list of complaints. */
({
  beyond() {
    const width = document.documentElement.clientWidth;
    const wide = document.documentElement.scrollWidth > width ? ["the page scrolls sideways"] : [];
    const out = [...document.body.querySelectorAll("*")].filter((each) => {
      const box = each.getBoundingClientRect();
      return box.width && box.right > width + 0.5 && !each.closest(".skip");
    });
    return wide.concat(out.map((each) => `${each.tagName} ${each.textContent.slice(0, 40)}`));
  },

  drawings() {
    const found = [];
    for (const drawing of document.querySelectorAll("svg.drawing, svg.plan")) {
      const view = drawing.viewBox.baseVal;
      const words = [...drawing.querySelectorAll("text")].map((each) => {
        const box = each.getBBox();
        return { text: each.firstChild?.nodeValue ?? "", left: box.x, top: box.y + box.height * 0.12,
                 right: box.x + box.width, bottom: box.y + box.height * 0.9 };
      });
      for (const [n, one] of words.entries()) {
        if (one.left < 0 || one.top < 0 || one.right > view.width || one.bottom > view.height)
          found.push(`${one.text} is outside`);
        for (const other of words.slice(n + 1))
          if (one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom)
            found.push(`${one.text} meets ${other.text}`);
      }
    }
    return found;
  },

  contrast() {
    const rgb = (text) => (text.match(/[\d.]+/g) ?? [0, 0, 0]).map(Number);
    const light = (text) => {
      const [r, g, b] = rgb(text).slice(0, 3).map((each) => {
        const part = each / 255;
        return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const ground = (each) => {
      for (let at = each; at; at = at.parentElement) {
        const colour = getComputedStyle(at).backgroundColor;
        const [, , , opacity = 1] = rgb(colour);
        if (opacity === 1) return colour;
      }
      return "rgb(255, 255, 255)";
    };
    const found = new Set();
    for (const each of document.body.querySelectorAll("*")) {
      const own = [...each.childNodes].some((node) => node.nodeType === 3 && node.nodeValue.trim());
      if (!own || each.closest("title")) continue;
      const style = getComputedStyle(each);
      const inSvg = each instanceof SVGElement;
      const grounds = [ground(each)];
      if (inSvg) {
        const plate = each.closest("svg").querySelector(".plate");
        if (each.classList.contains("number")) grounds[0] = getComputedStyle(each.previousElementSibling).fill;
        else if (plate) grounds.push(getComputedStyle(plate).fill);
      }
      for (const under of grounds) {
        const [high, low] = [light(inSvg ? style.fill : style.color), light(under)].sort((a, b) => b - a);
        const ratio = (high + 0.05) / (low + 0.05);
        if (ratio < 4.5)
          found.add(`${each.tagName}.${each.getAttribute("class")} ${ratio.toFixed(2)}: ${each.textContent.slice(0, 30)}`);
      }
    }
    return [...found];
  },

  keyboard() {
    const named = (each) => each.textContent.trim() || each.getAttribute("aria-label") || each.labels?.length;
    const found = [...document.querySelectorAll("a, input, button, select, textarea")]
      .filter((each) => each.tabIndex < 0 || !named(each))
      .map((each) => `${each.outerHTML.slice(0, 80)} is not named, or not reached by keys`);
    const levels = [...document.querySelectorAll("h1, h2, h3, h4, h5")].map((each) => Number(each.tagName[1]));
    levels.forEach((level, n) => {
      if (n && level > levels[n - 1] + 1) found.push(`heading ${n} jumps from ${levels[n - 1]} to ${level}`);
    });
    for (const each of document.querySelectorAll("svg[role]"))
      if (!each.querySelector(":scope > title")?.textContent) found.push("a drawing without a name");
    return found;
  },
})
