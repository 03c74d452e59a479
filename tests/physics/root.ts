/** A root by halving: slow and sure. The function must change sign between the ends. */
export function root(of: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  const rising = of(high) > of(low);
  if (of(low) > 0 === of(high) > 0) throw new Error('no change of sign');
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (low + high) / 2;
    if (of(middle) < 0 === rising) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
