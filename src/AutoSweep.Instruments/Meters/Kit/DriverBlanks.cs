using AutoSweep.Core.StrictJson;
using static AutoSweep.Core.StrictJson.JsonFieldPath;

namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>What a new driver's file leaves empty for the manual to fill.</summary>
internal static class DriverBlanks
{
    /// <summary>The empty ones.</summary>
    public static IEnumerable<JsonFieldFault> Of(MeterDriver driver) =>
        from field in Fields(driver)
        where string.IsNullOrWhiteSpace(field.Text)
        select new JsonFieldFault(field.Path, "an empty text", field.Wanted, "Fill it in.");

    private static IEnumerable<(string Path, string? Text, string Wanted)> Fields(MeterDriver driver) =>
    [
        ("title", driver.Title, "what it drives, in a few words"),
        .. driver.Identity.SelectMany((identity, index) => new (string, string?, string)[]
        {
            (Field(Item("identity", index), "maker"), identity.Maker, "the maker as *IDN? gives it; * stands for any text"),
            (Field(Item("identity", index), "model"), identity.Model, "the model as *IDN? gives it; * stands for any text"),
        }),
        ("frequency.source", driver.Frequency is { } frequency ? frequency.Source : "none", "where the waiting time is published, or how it was found"),
        ("level.accuracy.source", driver.Level?.Accuracy is { } accuracy ? accuracy.Source : "none", "where the accuracy is published"),
    ];
}
