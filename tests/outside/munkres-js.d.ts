/** The package ships no types. Costs by row and column, as many rows as columns or not; gives pairs of row and column. */
declare module 'munkres-js' {
  function computeMunkres(cost: readonly (readonly number[])[]): [number, number][];
  export default computeMunkres;
}
