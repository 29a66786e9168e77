/** Keys and indices from the top of a file to a value. */
export type Path = readonly (string | number)[];
