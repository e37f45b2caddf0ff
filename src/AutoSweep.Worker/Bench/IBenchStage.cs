using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Bench;

/// <summary>A part of the job that works through outputs as they are clipped.</summary>
public interface IBenchStage
{
    /// <summary>Which stage this is in the journal.</summary>
    JobStage Stage { get; }

    /// <summary>The outputs that it is to cover, in ascending number.</summary>
    IReadOnlyList<int> Plan { get; }

    /// <summary>Brings the bench to rest, ready for the next clip.</summary>
    Task RestAsync(CancellationToken cancellationToken);

    /// <summary>Works on what was clipped, up to the signal that it is done.</summary>
    Task WorkAsync(ClipVerdict verdict, CancellationToken cancellationToken);
}
