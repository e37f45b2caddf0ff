using AutoSweep.Bench.Tests.Support;
using AutoSweep.Core.Journal;
using AutoSweep.Pages.Tests.Support;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Pages.Tests.BenchPage.Support;

/// <summary>Data folders in which the demo's job stands where a picture needs it.</summary>
internal static class BenchFolder
{
    /// <summary>The demo's job as it was after its so-manyeth event of a kind, as if the power had failed then.</summary>
    /// <typeparam name="TEvent">The kind of event.</typeparam>
    /// <param name="record">The demo's job.</param>
    /// <param name="count">How many of them are kept, from 1.</param>
    public static string Until<TEvent>(DemoRecord record, int count)
        where TEvent : JournalEvent
    {
        var data = FinishedJob.CopyOf(record);
        var journal = Path.Combine(data, "jobs", FinishedJob.Name, "journal.jsonl");
        var last = JournalFile.Read(journal).Entries.Where(entry => entry.Event is TEvent).Select(entry => entry.Sequence).ElementAt(count - 1);
        var lines = JournalFile.Read(journal).Entries.TakeWhile(entry => entry.Sequence <= last).Count();
        File.WriteAllText(journal, string.Concat(File.ReadLines(journal).Take(lines).Select(line => line + "\n")));
        return data;
    }

    /// <summary>A new data folder in which a served simulated bench is wired up.</summary>
    public static string Wired(ServedBench bench) => Wired(Directory.CreateTempSubdirectory("autosweep-page-").FullName, bench);

    /// <summary>Wires a served simulated bench up in a data folder.</summary>
    public static string Wired(string data, ServedBench bench)
    {
        BenchWiringFile.Write(Path.Combine(data, "bench.json"), new()
        {
            Meter = bench.Meter, Fixture = bench.Fixture, Calibration = bench.Calibration, CapacitanceMeter = bench.CapacitanceMeter,
            AmplifierGain = bench.Ready.GetProperty("amplifierGain").GetDouble(),
        });
        return data;
    }

    /// <summary>Empties the drawers.</summary>
    public static string WithoutStock(string data)
    {
        File.Delete(Path.Combine(data, DataFolder.LedgerName));
        return data;
    }

    /// <summary>Writes that the box is dialled by hand and the meter read by eye.</summary>
    public static string ByHand(string data)
    {
        File.WriteAllText(Path.Combine(data, "bench.json"), """
            {
              "meter": "eye",
              "eye": { "unit": "millivolts", "accuracyPercent": 1, "name": "3-digit AC millivoltmeter" },
              "fixture": "hand",
              "box": {
                "name": "shop box 2",
                "decades": [
                  { "stepPicofarads": 100000 }, { "stepPicofarads": 10000 }, { "stepPicofarads": 1000 }, { "stepPicofarads": 100 }
                ],
                "strayPicofarads": 50,
                "tolerancePercent": 1
              }
            }
            """);
        return data;
    }
}
