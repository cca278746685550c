/** The caution that stands beside results wherever they are shown. */

export const CAUTION =
  'A throttle that does not close kills. These are calculations on the dimensions given; the parts themselves were not seen. ' +
  'Check the finished linkage by hand through its whole travel, engine off, cold and hot, with each spring removed in turn. ' +
  'Rules, local codes and qualified people decide whether it may be used.';
