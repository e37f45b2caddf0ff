using AutoSweep.Core.Generator;

namespace AutoSweep.Worker.Reports;

/// <summary>The generator, as its profile describes it.</summary>
/// <param name="Name">The profile's name, its variant in it.</param>
/// <param name="Invented">Whether it exists only in examples.</param>
/// <param name="MainsHertz">The mains frequency for which it was built, in hertz.</param>
/// <param name="Outputs">How many outputs it has.</param>
/// <param name="FilteredOutputs">How many of them have a filter with a capacitor.</param>
/// <param name="Source">Where the profile's figures come from.</param>
/// <param name="NotConfirmed">What in the profile nobody has confirmed, a sentence each.</param>
public sealed record ReportGenerator(
    string Name, bool Invented, double MainsHertz, int Outputs, int FilteredOutputs, string Source, IReadOnlyList<string> NotConfirmed)
{
    /// <summary>What a profile says.</summary>
    public static ReportGenerator Of(GeneratorProfile profile) => new(
        profile.Name, profile.Invented, profile.MainsHertz, profile.Outputs.Count, profile.FilteredOutputs.Count(), profile.Source, profile.NotConfirmed);
}
