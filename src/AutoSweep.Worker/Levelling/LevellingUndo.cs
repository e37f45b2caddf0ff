using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Reports;

namespace AutoSweep.Worker.Levelling;

/// <summary>Takes the last entry at a magnet back.</summary>
public static class LevellingUndo
{
    /// <summary>Takes it back; the rod stands where it stands, and its next reading tells where.</summary>
    /// <returns>The output whose entry it was; none where nothing was done at the magnets.</returns>
    public static int? TakeBack(JobRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        if (record.State.LastResult(JobStage.Level) is not { } last)
            return null;
        record.Append(new EntryWithdrawn(last.Sequence));
        ResultFiles.Write(record);
        return last.Output;
    }
}
