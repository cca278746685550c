/**
 * Members that are worked out when they are asked for.
 *
 * A `get` written into an object that is made again and again is one function more each time, and V8 gives each such object a layout of its
 * own that holds the function. The layout outlives the object until all memory is collected, and with it lives all that the function reaches:
 * of a text, its whole solve (measured: `--trace-gc-nvp` on objects with and without). Here all objects share the functions.
 */
import { keptOn } from './keptOn.ts';

/** How each member is worked out. */
export type Asked<Members> = { readonly [Name in keyof Members]: () => Members[Name] };

/** @returns adds these members to an object, and answers it; a copy by `...` works all of them out */
export function askedFor<Members extends object>(
  ...names: readonly (keyof Members & string)[]
): <Own extends object>(own: Own, asked: Asked<Members>) => Own & Readonly<Members> {
  const askedOf = keptOn<object, Asked<Members>>();
  const getters: PropertyDescriptorMap = {};
  for (const name of names) {
    getters[name] = {
      enumerable: true,
      configurable: true,
      get(this: object) {
        return askedOf.get(this)?.[name]();
      },
    };
  }
  return (own, asked) => {
    askedOf.set(own, asked);
    return Object.defineProperties(own, getters) as typeof own & Readonly<Members>;
  };
}
