// Keeps a paper from ending on a page with hardly anything on it: where the last
// page would hold only a few lines, the type is set a little smaller.

/** What both sheets leave within the margins of style.css, in units of the type
 *  of the paper, 9 pt: 178 mm across (A4); down 251 mm (Letter) and 269 mm (A4). */
const ACROSS = 56;
const DOWN = [79.2, 84.7];
/** How much smaller the type of a tight paper is: 8.4 pt. */
const TIGHTER = 9 / 8.4;
/** A last page filled less than this is nearly empty (assumption). */
const NEARLY_EMPTY = 0.3;
/** A last page filled more than this may run over: what is measured here and
 *  what a printer does differ by a few lines (assumption). */
const NEARLY_FULL = 0.88;
/** Room that a heading keeps with what follows it, in the type of the paper. */
const WITH_NEXT = 3;
const LEAVES = "p, li, tr, h2, h3, dt, .dot-figure, .change, .stage-row, .row-block, .after";

/** How full the last page is, by filling pages line by line as a printer does;
 *  nearly empty where it is so full that it may run over. down: in pixels */
function filled(units, down) {
  let pages = 1;
  let start = 0;
  let end = 0;
  for (const [from, to] of units) {
    if (to - start > down) {
      pages++;
      start = from;
      end = to;
    }
    end = Math.max(end, to);
  }
  const last = (end - start) / down;
  if (last > NEARLY_FULL) return 0;
  return pages === 1 ? 1 : last;
}

/** The emptier of the last pages on both sheets. */
function emptiest(paper, tighter) {
  const em = Number.parseFloat(getComputedStyle(paper).fontSize) * tighter;
  paper.style.setProperty("inline-size", `${ACROSS * em}px`);
  paper.classList.add("is-measured");
  paper.classList.toggle("is-tight", tighter > 1);
  const top = paper.getBoundingClientRect().top;
  const units = [...paper.querySelectorAll(LEAVES)]
    .map((n) => [n.getBoundingClientRect(), /^H\d$/.test(n.tagName) ? WITH_NEXT * em : 0])
    .filter(([r]) => r.height > 0 && r.height < DOWN[0] * em)
    .map(([r, more]) => [r.top - top, r.bottom - top + more])
    .sort((a, b) => a[0] - b[0]);
  paper.classList.remove("is-measured");
  paper.style.removeProperty("inline-size");
  return Math.min(...DOWN.map((down) => filled(units, down * em)));
}

/** Measures as printed, whatever the window, and sets the type. */
export function fit(paper) {
  if (!paper.isConnected) return;
  const plain = emptiest(paper, 1);
  const tight = plain < NEARLY_EMPTY && emptiest(paper, TIGHTER) > plain;
  paper.classList.toggle("is-tight", tight);
}
