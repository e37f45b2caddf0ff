using AutoSweep.Core;
using AutoSweep.Worker.Page.Work;

namespace AutoSweep.Worker.Page.Jobs;

/// <summary>Begins a job from the page, with refusals in the page's own words.</summary>
public static class JobBeginning
{
    /// <summary>Begins a job and puts it on the bench.</summary>
    /// <param name="desk">The desk.</param>
    /// <param name="typedName">What the person calls it.</param>
    /// <param name="choice">The generator; none where nobody has chosen.</param>
    /// <exception cref="BenchFaultException">No fit name, a name in use, no generator, or work goes on.</exception>
    public static Task BeginAsync(Desk desk, string? typedName, ProfileChoice? choice)
    {
        ArgumentNullException.ThrowIfNull(desk);
        var name = JobName.Require(typedName);
        if (InUse(desk.Options.Jobs, name) is { } taken)
            throw new BenchFaultException(BenchFault.JobInUse, $"a folder \"{taken}\" in the data folder", "a name that no job has yet",
                "type another name, or go on with that job in the list below");
        if (choice is null)
            throw new BenchFaultException(BenchFault.BadFile, "no generator chosen", "the generator on the bench", "choose one of the list");
        return desk.BeginAsync(name, choice.Profile);
    }

    // Two names that differ in case only are one folder on other systems.
    private static string? InUse(string jobs, string name) => Directory.Exists(jobs)
        ? Directory.GetDirectories(jobs).Select(Path.GetFileName)
            .FirstOrDefault(folder => string.Equals(folder, name, StringComparison.OrdinalIgnoreCase)) : null;
}
