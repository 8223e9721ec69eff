/** A function that makes its value anew only when one of its inputs is another than the last time: the same value for the same inputs. */
export function remembering<Inputs extends readonly unknown[], Value>(
  make: (...inputs: Inputs) => Value,
): (...inputs: Inputs) => Value {
  let last: { readonly inputs: Inputs; readonly value: Value } | undefined;
  return (...inputs) => {
    if (!last || inputs.some((one, i) => one !== last?.inputs[i])) last = { inputs, value: make(...inputs) };
    return last.value;
  };
}
