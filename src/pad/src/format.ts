// The words of a sides file, for completion only; the library decides what they mean.
export const KEYWORDS = (
  'property address account case tax year measured tolerance interior seen units faces front true veneer wall ' +
  'record listing plan figure counting sides missing recorded level below grade beside living unfinished garage ' +
  'carport porch patio deck balcony breezeway storage outbuilding open low stair court within start from corner ' +
  'counted lot outline north east south west by closing diagonal bearing arc rise close overall tie estimated ' +
  'common photo note outside frame inside feet inches meters'
).split(' ');

/// The lines of a new house.
export const NEW = 'front south\n\nlevel "Ground floor"\n  living "House"\n';

/// The fractions of an inch that a tape shows: every sixteenth, and how each is written.
export const FRACTIONS = [
  '', '1/16', '1/8', '3/16', '1/4', '5/16', '3/8', '7/16', '1/2', '9/16', '5/8', '11/16', '3/4', '13/16', '7/8', '15/16',
];

/// A fraction that is finished as it is typed, though a tape does not show it: `1/3` may still become `1/32`.
export const FINER = /^\d+\/(32|64)$/;

/// The units of the fields: of areas, and of a thickness.
export const UNITS = { feet: { area: 'sq ft', thickness: 'inches' }, metric: { area: 'sq m', thickness: 'cm' } };

/// The units that a file may state and that are metric.
export const METRIC = ['meters', 'centimeters', 'millimeters'];

/// A length as a field takes it.
export const LENGTH = '2\' 6"';
