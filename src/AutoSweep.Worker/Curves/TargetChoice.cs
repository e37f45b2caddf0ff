using AutoSweep.Core;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Curves;

/// <summary>Chooses a job's target curve and takes the choice back; every change is an entry of the job's journal.</summary>
public static class TargetChoice
{
    /// <summary>Chooses what is made of the target in force.</summary>
    /// <param name="record">The open job.</param>
    /// <param name="change">The new target from the one in force.</param>
    public static TargetCurve Choose(JobRecord record, Func<TargetCurve, TargetCurve> change)
    {
        var target = change(TargetCurve.Of(record.State));
        record.Append(new TargetChosen(target));
        return target;
    }

    /// <summary>Takes the latest choice back; the one before it, or the profile's own curve, is in force again.</summary>
    /// <returns>The target in force now.</returns>
    /// <exception cref="BenchFaultException">Nothing was chosen.</exception>
    public static TargetCurve TakeBack(JobRecord record)
    {
        if (record.State.LastTarget is not { } last)
            throw new BenchFaultException(
                BenchFault.BadFile, $"no chosen target in {record.Folder.Path}; the profile's own is in force", "a choice to take back",
                "nothing is to be done");
        record.Append(new EntryWithdrawn(last.Sequence));
        return TargetCurve.Of(record.State);
    }

    /// <summary>Opens a job that is there, with its lock.</summary>
    /// <exception cref="BenchFaultException">There is no job, another program works in it, or its journal is damaged.</exception>
    public static JobRecord Open(string folder)
    {
        // Reading first: a mistyped name must not make a folder.
        JobReading.Read(folder);
        return JobRecord.Resume(JobFolder.Open(folder), setAsideDamage: false, TimeProvider.System);
    }
}
