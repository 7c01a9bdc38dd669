// Keeps a paper from ending on a page with hardly anything on it: where only a few lines
// would be on the last page, the type becomes a little smaller.

/** The room within the margins of papers.css, in units of the type of the paper, 9 pt:
 *  178 mm across (A4), and 251 mm (Letter) and 269 mm (A4) down. */
const ACROSS = 56;
const DOWN_LETTER = 79.2;
const DOWN_A4 = 84.7;
/** How much smaller the type of a tight paper is: 8.4 pt. */
const TIGHTER = 9 / 8.4;
/** A last page filled less than this is nearly empty (assumption). */
const NEARLY_EMPTY = 0.3;
/** A last page filled more than this may run over, because a printer fills pages a few
 *  lines differently from what is measured here (assumption). */
const NEARLY_FULL = 0.88;
/** Room that a heading keeps with what follows it, in the type of the paper. */
const WITH_NEXT = 3;
const LEAVES = "p, li, tr, h2, h3, dt, .dot-figure, .change, .stage-row, .row-block, .after";

/** The upper and the lower edge of something that is not broken across pages, in pixels. */
type Unit = readonly [from: number, to: number];

/** How full the last page is, from 0 to 1, by filling pages line by line as a printer does;
 *  0 also where it is so full that it may run over. down: pixels on a page. */
function filled(units: readonly Unit[], down: number): number {
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

/** The emptier of the last pages on both sheets. tighter: how much smaller the type is. */
function emptiest(paper: HTMLElement, tighter: number): number {
  const em = Number.parseFloat(getComputedStyle(paper).fontSize) * tighter;
  paper.style.setProperty("inline-size", `${ACROSS * em}px`);
  paper.classList.add("is-measured");
  paper.classList.toggle("is-tight", tighter > 1);
  const top = paper.getBoundingClientRect().top;
  const units = [...paper.querySelectorAll(LEAVES)]
    .map((n) => ({ box: n.getBoundingClientRect(), more: /^H\d$/.test(n.tagName) ? WITH_NEXT * em : 0 }))
    .filter(({ box }) => box.height > 0 && box.height < DOWN_LETTER * em)
    .map(({ box, more }): Unit => [box.top - top, box.bottom - top + more])
    .sort((a, b) => a[0] - b[0]);
  paper.classList.remove("is-measured");
  paper.style.removeProperty("inline-size");
  return Math.min(filled(units, DOWN_LETTER * em), filled(units, DOWN_A4 * em));
}

/** Measures a paper as it will be printed, at any width of the window, and sets its type. */
export function fit(paper: HTMLElement): void {
  if (!paper.isConnected) return;
  const plain = emptiest(paper, 1);
  const tight = plain < NEARLY_EMPTY && emptiest(paper, TIGHTER) > plain;
  paper.classList.toggle("is-tight", tight);
}
