// What stands in the way, as one text.

export const inWords = (problems) => problems.map(({ sentence, way_out }) => `${sentence} ${way_out}`.trim()).join(" ");

/** The same with the place in the file before each. */
export const withPlaces = (problems) => problems.map(({ where, sentence, way_out }) => `${where ? `${where}: ` : ""}${sentence} ${way_out}`.trim()).join(" ");
