using System.CommandLine;
using AutoSweep.Core.Generator;
using AutoSweep.Worker.Job;

namespace AutoSweep.Worker.Commands;

/// <summary>The flags that say which job: its folder, its generator, new or resumed.</summary>
public sealed class JobFlags
{
    private readonly Option<string?> _generator = new("--generator")
    {
        Description = "The generator's profile: a file, or a shipped one "
            + $"({string.Join(", ", GeneratorProfileLibrary.Names)}). Not needed with --resume.",
        HelpName = "FILE",
    };
    private readonly Option<string> _job = new("--job")
    {
        Description = "The job's folder: journal, results and log. Made when it is not there.",
        HelpName = "DIR",
        Required = true,
    };

    private readonly Option<bool> _resume = new("--resume")
    {
        Description = "Go on with the job in the folder; nothing that is done is measured again.",
    };

    private readonly Option<bool> _setAside = new("--set-aside-damage")
    {
        Description = "With --resume: set journal lines aside that cannot be trusted. The file is kept as it was under another name.",
    };

    /// <summary>Adds the flags to a command.</summary>
    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { _generator, _job, _resume, _setAside })
            command.Add(option);
    }

    /// <summary>Opens the job: new, or resumed. A survey's job may be gone on with by a sweep.</summary>
    /// <exception cref="Core.BenchFaultException">In use, damaged, or a profile that cannot be read.</exception>
    public JobRecord Open(ParseResult parsed) => Open(parsed, goOn: false);

    /// <summary>Opens the job as <see cref="Open(ParseResult)"/> does, but goes on with a job that lies in the folder without being told: a
    /// service starts with the same words every time, and it measures nothing.</summary>
    /// <exception cref="Core.BenchFaultException">In use, damaged, or a profile that cannot be read.</exception>
    public JobRecord OpenOrGoOn(ParseResult parsed) => Open(parsed, goOn: true);

    private JobRecord Open(ParseResult parsed, bool goOn)
    {
        // The profile is read first: a typing error in its name must not leave an empty job behind.
        var generator = parsed.GetValue(_generator);
        var profile = generator is null ? null : GeneratorProfileLibrary.Open(generator);
        var folder = JobFolder.Open(parsed.GetValue(_job)!);
        try
        {
            return parsed.GetValue(_resume) || (goOn && new FileInfo(folder.Journal) is { Exists: true, Length: > 0 })
                ? JobRecord.Resume(folder, parsed.GetValue(_setAside), TimeProvider.System)
                : JobRecord.Begin(folder, profile ?? throw NoGenerator(), Software.NameAndVersion, TimeProvider.System);
        }
        catch
        {
            folder.Dispose();
            throw;
        }
    }

    private static Core.BenchFaultException NoGenerator() => new(
        Core.BenchFault.BadFile, "no generator was named", "a generator profile for a new job",
        $"give --generator with a file or one of {string.Join(", ", GeneratorProfileLibrary.Names)}, or --resume for a job that has begun");
}
