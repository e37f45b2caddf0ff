using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Page.AtBench;

/// <summary>One step of a job as it stands.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Stand">How it stands.</param>
/// <param name="Done">Outputs done.</param>
/// <param name="Planned">Outputs that it is about; 0 where that is not known yet.</param>
public sealed record JobStep(JobStepKind Kind, StepStand Stand, int Done, int Planned)
{
    /// <summary>The stage that the bench screen starts for it; none where the step has a page of its own.</summary>
    public JobStage? Stage => Kind switch
    {
        JobStepKind.Survey => JobStage.Survey,
        JobStepKind.Sweep => JobStage.Sweep,
        JobStepKind.Check => JobStage.Check,
        JobStepKind.AsLeft => JobStage.AsLeft,
        _ => null,
    };

    /// <summary>The page that it is done on; none where the bench screen starts it.</summary>
    public string? Page => Kind switch
    {
        JobStepKind.OldSet => "stock#old-title",
        JobStepKind.Match or JobStepKind.Fit => "parts",
        JobStepKind.Levels => "levels",
        JobStepKind.Record => "record",
        _ => null,
    };

    /// <summary>Whether it can be begun or gone on with now.</summary>
    public bool CanStart => Stand is StepStand.Open or StepStand.BrokenOff;
}
