using System.Text.Json;
using AutoSweep.Core;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Files;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Reports;

/// <summary>The result files of a job, each folded from its journal and replaced whole, so that a reader never meets half a file.</summary>
public static class ResultFiles
{
    private static readonly JsonSerializerOptions Json = new(JournalLine.Json) { WriteIndented = true };

    /// <summary>Writes the files of every stage that has begun.</summary>
    /// <exception cref="BenchFaultException">The folder cannot be written.</exception>
    public static void Write(JobRecord record)
    {
        var (state, folder) = (record.State, record.Folder);
        if (state.Planned.ContainsKey(JobStage.Survey))
            Replace(folder.Survey, SurveyCsv.Text(state));
        if (state.Planned.ContainsKey(JobStage.Sweep))
            Replace(folder.Sweeps, SweepsCsv.Text(state));
        if (state.Planned.ContainsKey(JobStage.AsLeft))
            Replace(folder.AsLeft, SurveyCsv.Text(state, JobStage.AsLeft));
        Replace(folder.Results, JsonSerializer.Serialize(JobResults.From(state), Json) + "\n");
    }

    /// <summary>Writes the picking list of a match.</summary>
    /// <exception cref="BenchFaultException">The folder cannot be written.</exception>
    public static void Write(JobFolder folder, PickingList list)
    {
        Replace(folder.PickingList + ".csv", PickingListCsv.Text(list));
        Replace(folder.PickingList + ".json", JsonSerializer.Serialize(list, Json) + "\n");
    }

    /// <summary>Puts a file in the place of an earlier one, whole or not at all.</summary>
    /// <exception cref="BenchFaultException">The folder cannot be written.</exception>
    internal static void Replace(string path, string text)
    {
        try
        {
            WholeFile.Write(path, text);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentOutOfRangeException)
        {
            throw new BenchFaultException(
                BenchFault.JournalNotWritten,
                $"{path} cannot be written ({fault.Message})",
                "room and permission in the job folder",
                "free some disk space or close the program that holds the file, then go on; the journal has everything",
                fault) { AtTerminal = "--resume" };
        }
    }
}
