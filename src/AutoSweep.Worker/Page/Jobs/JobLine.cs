using System.Globalization;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.History;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Reports;

namespace AutoSweep.Worker.Page.Jobs;

/// <summary>A job in the list: how far it is and what is left.</summary>
/// <param name="Summary">Its figures.</param>
/// <param name="Place">Its folder under the folder of jobs, with / between the parts.</param>
public sealed record JobLine(JobSummary Summary, string Place)
{
    private JobState State => Summary.Job.State;

    /// <summary>What the shop calls it.</summary>
    public string Name => Summary.Job.Name;

    /// <summary>Whether the page can go on with it: only jobs directly in the folder of jobs have a name that the desk knows.</summary>
    public bool CanOpen => !Place.Contains('/', StringComparison.Ordinal);

    /// <summary>Where it has got to, in a few words, such as <c>swept 40 of 43</c>.</summary>
    public string Reached
    {
        get
        {
            if (Summary.IsFinished)
                return "finished";
            var last = Enum.GetValues<JobStage>().Where(State.Planned.ContainsKey).Cast<JobStage?>().LastOrDefault();
            return last is { } stage && (State.Fitted.IsEmpty || stage >= JobStage.Check) ? Reach(stage)
                : !State.Fitted.IsEmpty ? Count("fitted", State.Fitted.Count, State.Swept.Count)
                : "begun, nothing read yet";
        }
    }

    /// <summary>What is left to do, in the order of the work; empty where nothing is.</summary>
    public IReadOnlyList<string> Left => Summary.IsFinished ? [] : [.. Open().Take(MostTold)];

    private const int MostTold = 3;

    /// <summary>The lines of a shelf, the job that was opened last first.</summary>
    public static IReadOnlyList<JobLine> Of(JobShelf shelf) =>
        [.. shelf.Jobs.Reverse().Select(job => new JobLine(JobSummary.Of(job), PlaceOf(shelf, job)))];

    private static string PlaceOf(JobShelf shelf, JobReading job) =>
        Path.GetRelativePath(shelf.Folder, job.Folder).Replace(Path.DirectorySeparatorChar, '/');

    private string Reach(JobStage stage)
    {
        var (done, planned) = Summary.Progress(stage);
        return Count(stage switch
        {
            JobStage.Survey => "surveyed",
            JobStage.Sweep => "swept",
            JobStage.Check => "checked",
            JobStage.Level => "levelled",
            _ => "surveyed as left",
        }, done, planned);
    }

    private static string Count(string done, int some, int all) => string.Create(CultureInfo.InvariantCulture, $"{done} {some} of {all}");

    private IEnumerable<string> Open()
    {
        foreach (var stage in Enum.GetValues<JobStage>().Where(IsWanted))
        {
            if (stage == JobStage.Check && Unfitted() is > 0 and var parts)
                yield return string.Create(CultureInfo.InvariantCulture, $"New capacitors: {parts} outputs");
            if (!State.Planned.ContainsKey(stage))
                yield return StageWords.Of(stage);
            else if (State.Missing(stage).Count() is > 0 and var missing)
                yield return string.Create(CultureInfo.InvariantCulture,
                    $"{StageWords.Of(stage)}: {missing} {(missing == 1 ? "output" : "outputs")}");
        }
    }

    // Levelling is for those that need it: a job is whole without it.
    private bool IsWanted(JobStage stage) => (stage != JobStage.Level || State.Planned.ContainsKey(stage))
        && (stage is not (JobStage.Sweep or JobStage.Check) || State.Profile!.FilteredOutputs.Any());

    private int Unfitted() => State.Profile!.FilteredOutputs.Count(output => !State.Fitted.ContainsKey(output.Number));
}
