using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Bench;

/// <summary>Tells which output is at the clips: by its tone, hands-free, or by asking for one after the other.</summary>
public interface IClipSource
{
    /// <summary>Waits for the next output that the stage still needs. Odd clips are questioned on the way.</summary>
    /// <param name="stage">The stage that asks.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    Task<ClipVerdict> NextAsync(JobStage stage, CancellationToken cancellationToken);

    /// <summary>Whether the tone of an output is at the clips now, as far as can be told.</summary>
    /// <param name="output">The output that was worked on.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>What was seen; a tone of another output or silence means that the clip has moved.</returns>
    Task<ToneSight> ConfirmAsync(int output, CancellationToken cancellationToken);
}
