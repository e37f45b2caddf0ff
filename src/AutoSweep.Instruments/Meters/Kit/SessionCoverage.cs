using AutoSweep.Instruments.Meters.Sessions;

namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>What a driver's sessions must show between them.</summary>
internal static class SessionCoverage
{
    /// <summary>What is missing.</summary>
    public static IEnumerable<DriverFault> Faults(DriverFolder folder, MeterDriver driver, IReadOnlyList<SessionFile> sessions)
    {
        var steps = sessions.SelectMany(session => session.Steps).ToArray();
        foreach (var (call, outcome) in Wanted(driver).Where(wanted => !steps.Any(step => Shows(step, wanted))))
            yield return new($"{folder.FileOf(DriverFolder.SessionsName)}: no \"! {call}\" with \"= {outcome} …\" behind it",
                "a value and an overload of everything that the driver reads, and a count",
                "Write down the manual's example, or record it: autosweep driver record.");
        foreach (var session in sessions.Where(session => !session.Remarks.Any(remark => remark.StartsWith("Source:", StringComparison.Ordinal))))
            yield return new($"{session.Path} names no source", "a line \"# Source: …\"",
                "Say what it was recorded from, or which page of which manual prints it.");
    }

    private static bool Shows(SessionStep step, (string Call, string Outcome) wanted) =>
        step.Call == wanted.Call && (step.Outcome?.StartsWith(wanted.Outcome, StringComparison.Ordinal) ?? false);

    private static IEnumerable<(string Call, string Outcome)> Wanted(MeterDriver driver) =>
    [
        .. driver.Level is null ? Array.Empty<(string, string)>() : [("read", "value"), ("read", "overload")],
        .. driver.Level?.Burst is null ? Array.Empty<(string, string)>() : [("series", "series of")],
        .. driver.Frequency is null ? Array.Empty<(string, string)>() : [("count", "value")],
        .. driver.Capacitance is null ? Array.Empty<(string, string)>() : [("measure", "capacitance"), ("measure", "overload")],
    ];
}
