using AutoSweep.Core;
using AutoSweep.Core.StrictJson;
using AutoSweep.Instruments.Meters.Sessions;

namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>The check of a driver folder without hardware: schema, units, sessions, notation, README.</summary>
public static class DriverFolderCheck
{
    /// <summary>Checks a folder, part by part.</summary>
    /// <returns>The parts in order. Where <c>driver.json</c> cannot be understood it is the only one.</returns>
    public static async Task<IReadOnlyList<DriverCheckItem>> CheckAsync(DriverFolder folder)
    {
        var (file, schema) = Understand(folder);
        if (file is not { Value: var driver })
            return [schema];
        List<DriverCheckItem> items =
        [
            schema,
            await SessionsAsync(folder, driver),
            new(DriverFolder.CommandsName, FormattableString.Invariant($"{CommandList.Sent(driver).Count()} messages against the manual's notation"),
                [.. CommandList.Faults(folder, file)]),
            new(DriverFolder.ReadmeName, "says what real units have confirmed", [.. Readme(folder)]),
        ];
        if (items.All(item => item.Faults.Count == 0))
            items.Add(await LinesAsync(folder));
        return items;
    }

    /// <summary>Which part of the check, if any, minds a folder: the first that finds a fault.</summary>
    internal static async Task<string?> MindsAsync(DriverFolder folder)
    {
        var (file, schema) = Understand(folder);
        if (file is null || schema.Faults.Count > 0)
            return schema.Name;
        if ((await SessionsAsync(folder, file.Value)).Faults.Count > 0)
            return DriverFolder.SessionsName;
        return CommandList.Faults(folder, file).Any() ? DriverFolder.CommandsName : null;
    }

    private static (CheckedJsonFile<MeterDriver>? File, DriverCheckItem Item) Understand(DriverFolder folder)
    {
        const string Says = "schema, units, what one field says of another";
        try
        {
            var file = StrictJsonFile.Parse<MeterDriver>(folder.DriverText, folder.FileOf(DriverLibrary.FileName));
            IEnumerable<JsonFieldFault> faults = [.. DriverBlanks.Of(file.Value), .. DriverCheck.Of(file.Value, folder.Name), .. DriverUnits.Of(file.Value)];
            return (file, new(DriverLibrary.FileName, Says, [.. faults.Select(fault => DriverFault.Of(file.Fault(fault)))]));
        }
        catch (BenchFaultException fault)
        {
            return (null, new(DriverLibrary.FileName, Says, [DriverFault.Of(fault)]));
        }
    }

    private static async Task<DriverCheckItem> SessionsAsync(DriverFolder folder, MeterDriver driver)
    {
        List<DriverFault> faults = [];
        List<SessionFile> sessions = [];
        foreach (var (path, lines) in folder.Sessions)
        {
            try
            {
                sessions.Add(SessionFile.Parse(path, lines));
                await SessionReplay.PlayAsync(sessions[^1], driver);
            }
            catch (BenchFaultException fault)
            {
                faults.Add(DriverFault.Of(fault));
            }
        }

        faults.AddRange(SessionCoverage.Faults(folder, driver, sessions));
        return new(DriverFolder.SessionsName,
            FormattableString.Invariant($"{sessions.Count} conversations, {sessions.Sum(session => session.Steps.Count)} calls, line for line"), faults);
    }

    // What no real unit has confirmed must be said; that it is said can be told only by these words.
    private static IEnumerable<DriverFault> Readme(DriverFolder folder)
    {
        if (folder.Readme is not { } text || !Says(text, "real unit") && !Says(text, "real meter"))
            yield return new(
                folder.Readme is null ? $"{folder.FileOf(DriverFolder.ReadmeName)} is missing" : $"{folder.FileOf(DriverFolder.ReadmeName)} has neither \"real unit\" nor \"real meter\"",
                "a README that says what a real unit has confirmed and what not",
                "Write which meter it was tried on, or that no real unit has confirmed it yet.");
    }

    private static bool Says(string text, string words) => text.Contains(words, StringComparison.OrdinalIgnoreCase);

    private static async Task<DriverCheckItem> LinesAsync(DriverFolder folder)
    {
        var mutants = await DriverMutant.RunAsync(folder);
        return new("lines", FormattableString.Invariant($"{mutants.Count(mutant => mutant.MindedBy is not null)} of {mutants.Count} commands are missed when deleted"),
            [.. mutants.Where(mutant => mutant.MindedBy is null).Select(mutant => new DriverFault(
                $"{mutant.Line} can be deleted and nothing above minds", "a session that shows what the command is for",
                "Add the call that sends it to a session; \"! open serial\" shows what goes over a serial line only."))]);
    }
}
