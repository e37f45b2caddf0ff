using AutoSweep.Core.Calibration;

namespace AutoSweep.Worker.Calibration;

/// <summary>A finding as a technician reads it.</summary>
public static class FindingText
{
    /// <summary>The relay, what is wrong, and the figures that show it.</summary>
    public static string Of(RelayFinding finding) =>
        (finding.Relay is { } relay ? FormattableString.Invariant($"relay {relay} {What(finding.Kind)}") : What(finding.Kind))
        + $": {finding.Evidence}";

    private static string What(RelayFindingKind kind) => kind switch
    {
        RelayFindingKind.StuckOpen => "is stuck open",
        RelayFindingKind.StuckClosed => "is stuck closed",
        RelayFindingKind.DoesNotSwitch => "does not switch (stuck open or stuck closed: both fit)",
        RelayFindingKind.Leaking => "or its capacitor leaks",
        RelayFindingKind.LeakingWhileOpen => "leaks while open",
        RelayFindingKind.OffWhenCombined => "changes its value in company",
        RelayFindingKind.Intermittent => "comes and goes",
        RelayFindingKind.UnlikelyValue => "has an unusual value",
        _ => "the relays' values do not add up",
    };
}
