using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Reports;

/// <summary>The names of stages and level curves in a record.</summary>
public static class StageWords
{
    /// <summary>A stage.</summary>
    public static string Of(JobStage stage) => stage switch
    {
        JobStage.Survey => "Survey as found",
        JobStage.Sweep => "Sweep for the peaking capacitance",
        JobStage.Check => "Check of the new capacitors",
        JobStage.Level => "Levelling at the magnets",
        _ => "Survey as left",
    };

    /// <summary>A level curve.</summary>
    public static string Of(CurveStand stand) => stand switch
    {
        CurveStand.AsFound => "as found",
        CurveStand.AfterRecap => "after recap",
        _ => "as left",
    };
}
