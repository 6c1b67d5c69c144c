// The calculation for other pages: one module under a name that stays. It finds the calculation itself, which lies
// beside it under a name that changes with every build.
//
//   import { init, evaluate } from 'https://…/api/clampwright.js';
//   await init();
//   evaluate({ tube_width_mm: 60 }).verdict;

import load, * as calculation from './{{api.js}}';

/** What every function here throws when something is refused: `errors` names every field. */
export class CalculationError extends Error {
  constructor(errors) {
    super(errors.map(({ message }) => message).join('; '));
    this.name = 'CalculationError';
    this.errors = errors;
  }
}

let loading;
let ready = false;

/** Loads the calculation, once however often it is called; call it before any other function. */
export function init(file = new URL('./{{api.wasm}}', import.meta.url)) {
  loading ??= load({ module_or_path: file }).then(
    () => {
      ready = true;
    },
    (fault) => {
      // The next call tries again.
      loading = undefined;
      throw fault;
    },
  );
  return loading;
}

const calls = (name) =>
  (...given) => {
    if (!ready) {
      throw new CalculationError([
        { code: 'not-ready', field: null, message: `${name}: wait for init() first, as in: await init()` },
      ]);
    }
    try {
      return calculation[name](...given);
    } catch (fault) {
      throw fault?.name === 'CalculationError' ? new CalculationError(fault.errors) : fault;
    }
  };

export const evaluate = calls('evaluate');
export const outlook = calls('outlook');
export const torqueTurn = calls('torqueTurn');
export const sample = calls('sample');
export const repairs = calls('repairs');
export const workSheet = calls('workSheet');
export const defaults = calls('defaults');
export const readQuantity = calls('readQuantity');
export const encodeLink = calls('encodeLink');
export const decodeLink = calls('decodeLink');
