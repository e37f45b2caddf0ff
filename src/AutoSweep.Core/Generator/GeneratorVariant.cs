using System.ComponentModel;

namespace AutoSweep.Core.Generator;

/// <summary>A published difference in the gearing of one kind of generator, to be chosen by name.</summary>
/// <param name="Description">What differs and by how much, in a sentence.</param>
/// <param name="GearTrains">The gear trains that take the place of the profile's own of the same name.</param>
public sealed record GeneratorVariant(
    [property: Description("What differs and by how much, in a sentence.")] string Description,
    [property: Description("The gear trains that take the place of the profile's own of the same name.")]
    IReadOnlyDictionary<string, GearTrain> GearTrains);
