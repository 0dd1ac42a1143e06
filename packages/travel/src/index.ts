// Legs and distances. Dated mileage rates and shared trips belong here too.

export {
  DISTANCE_UNITS,
  type Distance,
  type DistanceUnit,
  distance,
  distanceText,
  inUnit,
  type Leg,
} from './leg.ts';
