package rungwise.clinic.populations;

import rungwise.dosing.response.Population;

/**
 * What a document says.
 *
 * @param reference the id of the preparation whose strength is 1
 * @param origin what it rests on
 */
public record PopulationDocument(Population population, String reference, Origin origin) {}
