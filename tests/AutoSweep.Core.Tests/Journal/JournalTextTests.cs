using System.Text;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Tests.Support;

namespace AutoSweep.Core.Tests.Journal;

public sealed class JournalTextTests
{
    private static readonly string[] Lines = [.. Some.Entries(
        new JobOpened("AutoSweep", Some.Profile), new StageStarted(JobStage.Sweep, [9, 10]), Some.Swept(9), Some.Swept(10)).Select(JournalLine.Write)];

    [Fact]
    public void A_journal_cut_off_at_any_byte_keeps_every_whole_line_and_calls_no_line_damaged()
    {
        var whole = Encoding.UTF8.GetBytes(string.Join('\n', Lines) + "\n");
        var ends = whole.Select((value, index) => (value, index)).Where(one => one.value == '\n').Select(one => one.index + 1).ToList();

        for (var length = 0; length <= whole.Length; length++)
        {
            var text = JournalText.Read(whole.AsSpan(0, length));
            var complete = ends.Count(end => end <= length);
            Assert.Equal(complete, text.Entries.Count);
            Assert.Empty(text.Damaged);
            Assert.Equal(complete == 0 ? 0 : ends[complete - 1], text.SoundLength);
            Assert.Equal(length != 0 && length != text.SoundLength, text.TornTail);
        }
    }

    [Fact]
    public void A_damaged_line_in_the_middle_is_named_and_the_lines_around_it_are_kept()
    {
        var text = Read(Lines[0], Lines[1].Replace("sweep", "swept", StringComparison.Ordinal), Lines[2], Lines[3]);

        Assert.Equal(2, Assert.Single(text.Damaged).Line);
        Assert.Equal([1, 3, 4], text.Entries.Select(entry => entry.Sequence));
    }

    [Fact]
    public void A_missing_line_is_noticed_by_the_numbers()
    {
        var text = Read(Lines[0], Lines[2], Lines[3]);

        Assert.Contains("number is 3 where 2 should follow", text.Damaged[0].Trouble, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_written_twice_is_noticed_by_the_numbers()
    {
        var text = Read(Lines[0], Lines[1], Lines[1], Lines[2]);

        Assert.Equal(3, Assert.Single(text.Damaged).Line);
    }

    [Fact]
    public void A_last_line_that_is_whole_but_damaged_is_a_torn_one()
    {
        var text = Read(Lines[0], Lines[1][..^3]);

        Assert.True(text.TornTail);
        Assert.Single(text.Entries);
    }

    private static JournalText Read(params string[] lines) => JournalText.Read(Encoding.UTF8.GetBytes(string.Join('\n', lines) + "\n"));
}
