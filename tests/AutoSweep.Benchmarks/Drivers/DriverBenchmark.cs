using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Meters.Kit;
using Spectre.Console;

namespace AutoSweep.Benchmarks.Drivers;

/// <summary>Every command of every driver deleted in turn: whether the check of its folder minds.</summary>
internal sealed class DriverBenchmark(TimeProvider clock) : IBenchmark
{
    public string Name => "drivers";

    public string Summary => "every command of every driver deleted in turn: what the check minds, what survives";

    public IReadOnlyList<Figure> Run(IAnsiConsole console) => RunAsync(console).GetAwaiter().GetResult();

    private async Task<IReadOnlyList<Figure>> RunAsync(IAnsiConsole console)
    {
        var began = clock.GetTimestamp();
        var table = new Table().Title("Mutation run: one command deleted at a time");
        foreach (var column in new[] { "driver", "commands", "mutants", "killed by schema", "by sessions", "by commands.txt", "survivors" })
            table.AddColumn(column);
        var (faults, survivors, level, capacitance) = (0, 0, 0, 0);
        foreach (var name in DriverLibrary.BesideProgram.Names)
        {
            var folder = DriverFolder.Read(DriverLibrary.BesideProgram.FolderOf(name));
            var driver = DriverLibrary.BesideProgram.Read(name);
            var mutants = await DriverMutant.RunAsync(folder);
            faults += (await DriverFolderCheck.CheckAsync(folder)).Sum(item => item.Faults.Count);
            survivors += Count(mutants, null);
            level += driver.Level is null ? 0 : 1;
            capacitance += driver.Capacitance is null || driver.Level is not null ? 0 : 1;
            table.AddRow(name, $"{mutants.Count(mutant => mutant.Line.StartsWith(DriverLibrary.FileName, StringComparison.Ordinal))}", $"{mutants.Count}",
                $"{Count(mutants, DriverLibrary.FileName)}", $"{Count(mutants, DriverFolder.SessionsName)}", $"{Count(mutants, DriverFolder.CommandsName)}",
                $"{Count(mutants, null)}");
        }

        console.Write(table);
        return
        [
            new("drivers.surviving_mutants", survivors, 0),
            new("drivers.faults_of_the_check", faults, 0),
            new("drivers.level_meters_missing_of_8", Math.Max(0, 8 - level), 0),
            new("drivers.capacitance_meters_missing_of_4", Math.Max(0, 4 - capacitance), 0),
            new("drivers.time.seconds", clock.GetElapsedTime(began).TotalSeconds, 60),
        ];
    }

    private static int Count(IReadOnlyList<DriverMutant> mutants, string? mindedBy) => mutants.Count(mutant => mutant.MindedBy == mindedBy);
}
