namespace AutoSweep.Worker.Page.Record;

/// <summary>A file of the open job that the page links to.</summary>
/// <param name="Name">Its name in the job's folder.</param>
/// <param name="What">What it is, in words.</param>
/// <param name="Written">When it was written last; none where it is not there yet.</param>
public sealed record RecordFile(string Name, string What, DateTimeOffset? Written)
{
    private static readonly (string Name, string What)[] Known =
    [
        ("report.html", "the full record, for the shop"), ("report-customer.html", "the short record, for the customer"),
            ("report.csv", "one row an output"),
        ("report.json", "everything, as JSON"), ("picking-list.csv", "the parts of the latest match"), ("survey.csv", "the survey as found"),
        ("sweeps.csv", "the peaking capacitances"), ("as-left.csv", "the survey as left"), ("results.json", "all results, as JSON"),
    ];

    /// <summary>Where the page serves it.</summary>
    public string Address => $"files/{Name}";

    /// <summary>The files of a job, those of the record first.</summary>
    /// <param name="folder">The job's folder.</param>
    public static IReadOnlyList<RecordFile> In(string folder) =>
        [.. Known.Select(file => new RecordFile(file.Name, file.What,
            Path.Combine(folder, file.Name) is var path && File.Exists(path) ? File.GetLastWriteTimeUtc(path) : null))];
}
