// The thread: one line from the words of a trouble to its place in the room, down the gutter beside its numbers, to its moment
// on the strip. From there it runs on to the right, because the trouble is still open. No trouble, no thread.
import { el, mark, path } from './svg.js';

/**
 * from, place, moment: px points in the overlay; ring: radius round the place. channelY and stripY: free heights
 * above the room and above the strip; gutterX: the free column beside the numbers; edgeX: the end of the strip.
 */
export function drawThread(svg, { priority, from, place, ring = 16, moment, channelY, gutterX, stripY, edgeX }) {
  const g = el('g', { class: `thread-of-${priority}` }), cls = `thread thread-${priority}`, r = ring;
  // An edge in the colour of the ground keeps the line apart from whatever it crosses.
  const lay = d => g.append(path(d, 'thread-edge'), path(d, cls));
  if (place) {
    lay(`M${from[0]},${from[1]}V${channelY}H${place[0]}V${place[1] - r}`);
    if (moment) lay(`M${place[0] + r},${place[1]}H${gutterX}V${stripY}H${moment[0]}V${moment[1]}H${edgeX}`);
    lay(`M${place[0] - r},${place[1]}a${r},${r} 0 1 1 ${2 * r},0a${r},${r} 0 1 1 ${-2 * r},0Z`);
  } else if (moment) lay(`M${from[0]},${from[1]}V${channelY}H${edgeX + 14}V${moment[1]}H${moment[0]}`);
  if (moment) g.append(mark(priority, moment[0], moment[1] - 7, 13));
  svg.append(g);
}

/** The closed thread of a trouble that is over: a box from its beginning to its end, and nothing in the room. */
export function drawClosedThread(svg, { priority, from, to, top, bottom }) {
  const end = Math.max(to, from + 6);
  svg.append(el('g', {}, path(`M${from},${top}H${end}V${bottom}H${from}Z`, `thread thread-${priority}`), mark(priority, from, bottom - 7, 13)));
}
