// SPDX-License-Identifier: GPL-3.0-or-later
// Lets long tables sort, page and be searched. Without it a table reads as it was written: the first rows, the rest folded away.
// It is written into pages as it stands, so it uses neither the smaller-than sign nor the ampersand: the page stays well-formed.
// Nothing is loaded, stored or sent; text from the table is only ever compared, never made into markup.
(function () {
  "use strict";
  var SIZES = [10, 25, 50];
  // One fixed order for every reader; digits count as numbers, so that H9 comes before H10 and 9:19 before 10:02.
  var WORDS = new Intl.Collator("en", {numeric: true});

  function make(name, parent, text) {
    var element = document.createElement(name);
    if (text) { element.textContent = text; }
    if (parent) { parent.appendChild(element); }
    return element;
  }

  function button(parent, text, label, action) {
    var made = make("button", parent, text);
    made.type = "button";
    if (label) { made.setAttribute("aria-label", label); }
    made.addEventListener("click", action);
    return made;
  }

  function bringToLife(root) {
    if (root.parchmentTable) { return; }
    // While a page is still read, a table further down may be half there; it is whole once its own script is.
    if (document.readyState === "loading") { if (!root.querySelector("script")) { return; } }
    root.parchmentTable = true;
    // A notebook has keys of its own; those pressed here are meant for the table.
    ["keydown", "keypress", "keyup"].forEach(function (type) {
      root.addEventListener(type, function (event) { event.stopPropagation(); });
    });
    root.setAttribute("data-lm-suppress-shortcuts", "true");
    // A page saved from a running browser has the tools of that time in it; they are made anew.
    root.querySelectorAll(".tools").forEach(function (old) { old.remove(); });
    var table = root.querySelector("table");
    var body = table.tBodies[0];
    var folded = root.querySelector("details");
    if (folded) {
      folded.querySelectorAll("tbody tr").forEach(function (row) { body.appendChild(row); });
      folded.remove();
    }
    var rows = Array.from(body.rows);
    rows.forEach(function (row, place) { row.written = place; });
    var pages = root.hasAttribute("data-page") ? rows.length > Number(root.getAttribute("data-page")) : false;
    var size = pages ? 10 : rows.length;
    SIZES.forEach(function (one) { if (Number(root.getAttribute("data-page")) >= one) { if (pages) { size = one; } } });
    var order = rows;
    var first = 0;
    var sortedBy = -1;
    var direction = 1;
    var wanted = "";
    var count = make("p");
    var sizes = [];
    var back = null;
    var on = null;

    function key(row, column) {
      var cell = row.cells[column];
      if (cell.classList.contains("missing")) { return null; }
      return cell.hasAttribute("data-key") ? Number(cell.getAttribute("data-key")) : cell.textContent;
    }

    function compare(a, b) {
      var x = key(a, sortedBy);
      var y = key(b, sortedBy);
      if (x === null || y === null) { // What is missing stands last in either direction.
        return (x === null ? 1 : 0) - (y === null ? 1 : 0) || a.written - b.written;
      }
      var by = typeof x === "number" ? (x > y ? 1 : 0) - (y > x ? 1 : 0) : WORDS.compare(x, y);
      return direction * by || a.written - b.written;
    }

    function show() {
      var found = order.filter(function (row) { return wanted === "" || row.textContent.toLowerCase().includes(wanted); });
      first = Math.max(0, Math.min(first, Math.floor((found.length - 1) / size) * size));
      var last = Math.min(found.length, first + size);
      rows.forEach(function (row) { row.hidden = true; });
      found.slice(first, last).forEach(function (row) { row.hidden = false; });
      var among = wanted === "" ? "" : " found among " + rows.length;
      count.textContent = found.length === 0
          ? "no rows" + among
          : "rows " + (first + 1) + " to " + last + " of " + found.length + among;
      if (pages) {
        back.disabled = first === 0;
        on.disabled = last >= found.length;
        sizes.forEach(function (one) { one.setAttribute("aria-pressed", String(one.rowsShown === size)); });
      }
    }

    function sort(column, headings) {
      if (sortedBy !== column) { sortedBy = column; direction = 1; }
      else if (direction === 1) { direction = -1; }
      else { sortedBy = -1; }
      headings.forEach(function (heading, place) {
        if (place === sortedBy) { heading.setAttribute("aria-sort", direction === 1 ? "ascending" : "descending"); }
        else { heading.removeAttribute("aria-sort"); }
      });
      order = sortedBy === -1 ? rows : rows.slice().sort(compare);
      order.forEach(function (row) { body.appendChild(row); });
      first = 0;
      show();
    }

    var headings = Array.from(table.tHead.rows[0].cells);
    headings.forEach(function (heading, column) {
      var pressed = heading.querySelector("button");
      if (pressed) { heading.replaceChildren.apply(heading, Array.from(pressed.childNodes)); }
      var inside = Array.from(heading.childNodes);
      pressed = button(heading, "", "", function () { sort(column, headings); });
      inside.forEach(function (node) { pressed.appendChild(node); });
      pressed.title = "Sort by this column";
      heading.removeAttribute("aria-sort");
    });

    var tools = make("div");
    tools.className = "tools";
    count.setAttribute("role", "status");
    if (pages) {
      var finds = make("label", tools, "Find ");
      var box = make("input", finds);
      box.type = "search";
      box.size = 14;
      box.addEventListener("input", function () { wanted = box.value.trim().toLowerCase(); first = 0; show(); });
      var group = make("span", tools);
      group.setAttribute("role", "group");
      group.setAttribute("aria-label", "Rows per page");
      make("span", group, "rows per page ");
      SIZES.concat([rows.length]).filter(function (one, place, all) {
        return rows.length > one || place === all.length - 1;
      }).forEach(function (one) {
        var text = one === rows.length ? "all" : String(one);
        var made = button(group, text, text + " rows per page", function () { size = one; show(); });
        made.rowsShown = one;
        sizes.push(made);
      });
      var turn = make("span", tools);
      back = button(turn, "previous", "Previous rows", function () { first = first - size; show(); });
      on = button(turn, "next", "Next rows", function () { first = first + size; show(); });
    }
    tools.appendChild(count);
    if (pages) { table.parentNode.insertBefore(tools, table); }
    // Names of rows stay in sight while a wide table is moved sideways; they need a ground of the page's own colour for that.
    root.addEventListener("scroll", function () {
      var ground = root;
      while (ground.parentElement) {
        if (!/^(transparent|rgba\(.*, 0\))$/.test(getComputedStyle(ground).backgroundColor)) { break; }
        ground = ground.parentElement;
      }
      var colour = getComputedStyle(ground).backgroundColor;
      root.style.setProperty("--ground", /^(transparent|rgba\(.*, 0\))$/.test(colour) ? "Canvas" : colour);
      root.classList.toggle("moved", root.scrollLeft > 0);
    });
    show();
  }

  function all() {
    document.querySelectorAll(".parchment-table[data-lively]").forEach(bringToLife);
  }

  all();
  // Some pages run a cell's script before they show its output.
  setTimeout(all, 0);
  setTimeout(all, 400);
})();
