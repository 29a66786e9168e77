/** Distances of the connection drawing, in drawing units. */

/** Between two parts one above the other. */
export const PART_GAP = 13;
/** Between a lane and a part or the edge of an enclosure. */
export const LANE_GAP = 9;
/** Between two lanes, and between two wires on one terminal at the least. */
export const LANE_PITCH = 8;
/** Between the upright stretches of two wires. */
export const TRACK_PITCH = 7.5;
/** Between an upright stretch and a part. */
export const TRACK_GAP = 8;
/** Between two columns of parts with nothing upright between them. */
export const LEAST_CHANNEL = 26;
/** From an enclosure's edge to its parts; at the top stands its title. */
export const BOX_INSET = 11;
export const BOX_TOP = 29;
export const LANE_TOP = 27;
/** Between two enclosures. */
export const BOX_GAP = 14;
/** Round the drawing. */
export const MARGIN_X = 8;
export const MARGIN_Y = 10;
