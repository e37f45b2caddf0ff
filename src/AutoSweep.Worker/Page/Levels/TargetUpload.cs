using AutoSweep.Core.Curve;
using AutoSweep.Worker.Curves;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.Shared;

namespace AutoSweep.Worker.Page.Levels;

/// <summary>A job's target curve from a file that was sent: all of it or nothing.</summary>
public static class TargetUpload
{
    /// <summary>Takes the curve in.</summary>
    /// <returns>What the person should know: columns that were passed over, outputs without a target.</returns>
    /// <exception cref="Core.BenchFaultException">A bad line; every bad line is named, and the target stays as it was.</exception>
    public static IReadOnlyList<string> Take(JobRecord record, UploadedFile sent)
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(sent);
        var import = CurveFile.Parse(sent.Text, sent.Name, record.Profile);
        var name = Path.GetFileNameWithoutExtension(sent.Name);
        TargetChoice.Choose(record, _ => new TargetCurve(name, $"the file {sent.Name}, levels in {import.Unit.Symbol}", import.Points));
        return import.Notes;
    }
}
