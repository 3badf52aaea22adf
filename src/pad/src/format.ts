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

/// The fractions of an inch that a tape shows.
export const FRACTIONS = ['', '1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8'];

/// The units of the fields: of areas, and of a thickness.
export const UNITS = { feet: { area: 'sq ft', thickness: 'inches' }, metric: { area: 'sq m', thickness: 'cm' } };

/// The units that a file may state and that are metric.
export const METRIC = ['meters', 'centimeters', 'millimeters'];

/// A length as a field takes it.
export const LENGTH = '2\' 6"';
