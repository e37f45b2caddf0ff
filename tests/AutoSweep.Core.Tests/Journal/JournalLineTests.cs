using System.Text;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Magnets;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Journal;

public sealed class JournalLineTests
{
    public static TheoryData<JournalEvent> Events => new(
        new JobOpened("AutoSweep 0.1.0", Some.Profile),
        new BenchConnected { MeterResource = "TCPIP::192.0.2.1::5025::SOCKET", MeterIdentity = "a,b,c,d", MeterDriver = "scpi-dmm",
            AmplifierGain = 20 },
        new StageStarted(JobStage.Sweep, [49, 50]),
        new OutputRecognised(JobStage.Sweep, 49, 523.0769, RecognisedBy.Tone),
        Some.Read(49, 254_393),
        new OutputSurveyed { Output = 3, IsNamedByPerson = true, Millivolts = 0.01, NoiseMillivolts = 0.002, Flags = [SurveyFinding.Dead] },
        new OutputSurveyed { Output = 4, ToneHertz = 38.9, Millivolts = 5.9, NoiseMillivolts = 0.01, WheelSwing = 0.012, WheelSwingUncertainty = 0.0004,
            HumHertz = 60, Flags = [] },
        Some.Swept(49),
        new OutputFitted
        {
            Output = 49,
            Parts = ["P00017", "P00022"],
            MeasuredPicofarads = 254_400,
            StandardUncertaintyPicofarads = 80.5,
            WantedPicofarads = 254_393,
            LossDecibels = 0.0001,
            LedgerSequence = 12,
        },
        new OutputChecked { Output = 49, ToneHertz = 523.1, Millivolts = 5.3, PredictedMillivolts = 5.4, StandardUncertaintyDecibels = 0.09, IsExplained = true },
        new OutputAbandoned(JobStage.Sweep, 50, "the clip came off"),
        new ClipQuestioned(JobStage.Sweep, ClipQuestion.AlreadyDone, 49, 523.1),
        new ClipQuestioned(JobStage.Survey, ClipQuestion.NoTone, null, null),
        new OutputRecognised(JobStage.Survey, 12, null, RecognisedBy.Order),
        new EntryWithdrawn(7),
        new LinesSetAside("journal.jsonl.damaged", [4]),
        new StageEnded(JobStage.Survey),
        new TargetChosen(new("as my shop likes it (invented)", "drawn by hand", [new(1, 5.2, 1), new(2, 5.1, 0.5)])),
        new HazardAcknowledged(JobStage.Level, "a touched wheel is ruined", "typed"),
        new MagnetRead { Output = 61, Millivolts = 5.1, TargetMillivolts = 4.4, SdDecibels = 0.03 },
        new MagnetRead { Output = 61, Millivolts = 4.6, TargetMillivolts = 4.4, SdDecibels = 0.03, After = new(MoveDirection.Out, 0.05, 0.02) },
        new OutputLevelled { Output = 61, Ending = GuidanceEnding.InBand, Moves = 1, TargetMillivolts = 4.4, BeforeMillivolts = 5.1, AfterMillivolts = 4.6 },
        new InstrumentLost(BenchInstrument.Fixture, "ASRL/dev/ttyUSB0::INSTR", "the link broke at *OPC?"),
        Some.Matched);

    [Theory]
    [MemberData(nameof(Events))]
    public void Every_kind_of_event_comes_back_from_its_line_as_it_was(JournalEvent what)
    {
        var line = JournalLine.Write(new(7, Some.Time, what));

        Assert.True(JournalLine.TryRead(line, out var entry, out _));
        Assert.DoesNotContain('\n', line);
        Assert.Equal(line, JournalLine.Write(entry!));
        Assert.IsType(what.GetType(), entry!.Event);
    }

    [Fact]
    public void Every_kind_of_event_is_in_the_table_above()
    {
        var known = typeof(JournalEvent).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(JournalEvent)));

        Assert.Equal(known.Select(type => type.Name).Order(), ((IEnumerable<object[]>)Events).Select(row => row[0].GetType().Name).Distinct().Order());
    }

    [Fact]
    public void A_change_of_any_single_byte_is_noticed()
    {
        var line = Encoding.UTF8.GetBytes(JournalLine.Write(new(7, Some.Time, Some.Read(49, 254_393))));

        for (var place = 0; place < line.Length; place++)
        {
            var changed = (byte[])line.Clone();
            changed[place] ^= 0x01;
            Assert.False(JournalLine.TryRead(Encoding.UTF8.GetString(changed), out _, out var trouble), $"byte {place}");
            Assert.NotEmpty(trouble);
        }
    }

    // Check value of CRC-32 for the text "123456789": CBF43926 (ISO 3309 / ITU-T V.42, as listed in the catalogue of parametrised CRC
    // algorithms, from memory).
    [Fact]
    public void The_checksum_is_the_standard_CRC_32()
    {
        Assert.Equal(0xCBF43926u, System.IO.Hashing.Crc32.HashToUInt32("123456789"u8));
        var line = JournalLine.Write(new(1, Some.Time, new StageEnded(JobStage.Sweep)));
        var body = line[..line.LastIndexOf(",\"crc\"", StringComparison.Ordinal)];
        Assert.EndsWith($"{System.IO.Hashing.Crc32.HashToUInt32(Encoding.UTF8.GetBytes(body)):x8}\"}}", line);
    }
}
