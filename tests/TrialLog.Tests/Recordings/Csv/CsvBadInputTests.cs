using System.Text;
using CsCheck;
using TrialLog.Domain.Log;
using TrialLog.Domain.Values;
using TrialLog.Recordings.Csv;
using TrialLog.Reports.Documents;

namespace TrialLog.Tests.Recordings.Csv;

public class CsvBadInputTests
{
    private const string GoodRow = "Ilse Maro,2026-05-01,,1,OC1,Long,49.75,1000,5:32,6,2,";

    [Theory]
    [InlineData("date", "2026-02-30", "not a day of the calendar")]
    [InlineData("date", "01/05/2026", "year first")]
    [InlineData("date", "2026-06-03", "in the future")]
    [InlineData("date", "0206-05-01", "check the year")]
    [InlineData("date", "", "needs a day")]
    [InlineData("hull", "", "needs the hull's name")]
    [InlineData("paddler", "Ilse\u0007Maro", "control characters")]
    [InlineData("hull", "OC1\u001B[2J", "control characters")]
    [InlineData("paddle", "ninety-nine letters are too many for a paddle, since nobody could read so long a name on any screen at all",
        "longer than 80")]
    [InlineData("piece", "1.5", "whole number")]
    [InlineData("piece", "-1", "whole number")]
    [InlineData("length_in", "-49.75", "not a length")]
    [InlineData("length_in", "0", "not believable")]
    [InlineData("length_in", "12", "did you mean")]
    [InlineData("length_in", "126.4", "did you mean")]
    [InlineData("length_in", "forty-nine", "not a length")]
    [InlineData("length_in", "NaN", "not a length")]
    [InlineData("length_in", "1e3", "not a length")]
    [InlineData("length_in", "", "needs the paddle's length")]
    [InlineData("distance_m", "0", "not between 1 m and 1,000 km")]
    [InlineData("distance_m", "-1000", "not a distance")]
    [InlineData("distance_m", "", "needs the distance")]
    [InlineData("distance_m", "99999999", "not between 1 m and 1,000 km")]
    [InlineData("time", "5:62", "60 or more")]
    [InlineData("time", "0:00", "not between 1 second and 48 hours")]
    [InlineData("time", "-5:32", "not a time")]
    [InlineData("time", "five", "not a time")]
    [InlineData("time", "", "needs the time")]
    [InlineData("time", "1:23", "faster than any paddled piece")]
    [InlineData("time", "5:32:00", "slower than drifting")]
    [InlineData("effort", "11", "0 to 10")]
    [InlineData("effort", "-1", "0 to 10")]
    [InlineData("effort", "6.3", "halves")]
    [InlineData("wind", "13", "0 to 12")]
    [InlineData("notes", "beep\u0007", "control characters")]
    [InlineData("outing", "a\u0001b", "control characters")]
    public void A_wrong_cell_is_refused_by_its_line_and_column_with_the_reason(string column, string cell, string reason)
    {
        string[] columns = Files.Header.Split(',');
        string[] cells = GoodRow.Split(',');
        cells[Array.IndexOf(columns, column)] = "\"" + cell + "\"";
        CsvLogContents contents = Files.Read(
            Files.Rows("Ilse Maro,2026-05-02,,1,OC1,Long,50,1000,5:32,6,2,", string.Join(',', cells), GoodRow));

        Assert.Contains(contents.Problems, problem => problem.Line == 3 && problem.Column == column
            && problem.Reason.Contains(reason, StringComparison.Ordinal));
        Assert.All(contents.Problems, problem => Assert.Equal(3, problem.Line));
        Assert.Equal(1, contents.RefusedRows);
        Assert.Equal([2, 4], contents.Rows.Select(row => row.Line));
    }

    [Fact]
    public void A_row_says_all_that_is_wrong_with_it_at_once()
    {
        CsvLogContents contents = Files.Read(Files.Rows("Ilse Maro,2026-02-30,,x,OC1,Long,49.75,1000,5:62,99,2,"));
        Assert.Equal(["date", "effort", "piece", "time"], contents.Problems.Select(problem => problem.Column).Order());
        Assert.Equal(1, contents.RefusedRows);
    }

    [Fact]
    public void Tomorrow_is_taken_since_somewhere_it_has_begun() =>
        Assert.Empty(Files.Read(Files.Rows(GoodRow.Replace("2026-05-01", "2026-06-02"))).Problems);

    [Fact]
    public void Line_numbers_count_line_breaks_inside_cells_and_blank_lines()
    {
        CsvLogContents contents = Files.Read(
            Files.Header + "\r\n" + GoodRow + "\"two\r\nlines\"\r\n\r\n,,,,,,,,,,,\r\n" + GoodRow.Replace("5:32", "late") + "\r\n");
        Assert.Equal(6, Assert.Single(contents.Problems).Line);
        Assert.Equal("two\r\nlines", Assert.Single(contents.Rows).Piece!.Notes);
    }

    [Theory]
    [InlineData("paddler,notes", "date, hull, length_in or length_cm, distance_m or distance_km and time or time_s")]
    [InlineData("date,hull,length_in,distance_m", "time or time_s")]
    [InlineData("a,b,c", "None of its columns is known (a, b, c)")]
    [InlineData("date,hull,length_in,distance_m,time,Length In", "length_in twice")]
    public void A_header_that_lacks_columns_or_doubles_them_is_refused_by_name(string header, string says) =>
        Assert.Contains(says, Assert.Throws<InvalidValueException>(() => Files.Read(header + "\n1,2,3,4,5\n")).Message);

    [Theory]
    [InlineData("", "empty")]
    [InlineData("\n\n  \n", "only blank lines")]
    [InlineData("PK\u0003\u0004rest", "spreadsheet or a zip file")]
    [InlineData("\u0000\u0001\u0002\u0003", "not text")]
    [InlineData("date,\"hull,length_in,distance_m,time\n2026-05-01,OC1", "quotation marks")]
    public void What_is_no_csv_is_refused_as_a_whole(string text, string says) =>
        Assert.Contains(says, Assert.Throws<InvalidValueException>(() => Files.Read(text)).Message);

    [Fact]
    public void Random_bytes_give_one_sentence_or_problems_but_never_a_crash() =>
        Gen.Select(Gen.Bool, Gen.Byte.Array[0, 300]).Sample((withHeader, bytes) =>
        {
            byte[] file = withHeader ? [.. Encoding.UTF8.GetBytes(Files.Header + "\n"), .. bytes] : bytes;
            try
            {
                CsvLogContents contents = CsvLog.Read(new MemoryStream(file), Files.Options);
                CsvAssembly.Assemble(contents, KnownLog.Fresh, Files.Options);
            }
            catch (InvalidValueException refusal)
            {
                Assert.DoesNotContain('\n', refusal.Message);
            }
        }, iter: 3000);

    [Fact]
    public void Random_cells_give_problems_but_never_a_crash()
    {
        Gen<string> cell = Gen.OneOf(
            Gen.OneOf("", "0", "-1", "1e9", "49¾", "=1+1", "999999999999999999999", "2026-05-01", "OC1", "5:32", "\"", "\u202E", "½",
                "1/0", "∞", "٣"),
            Gen.OneOf("0123456789.,:;-+/'\" ½¾aehimnst".ToCharArray()).Array[0, 12].Select(letters => new string(letters)));
        cell.Array[48].Array[1, 6].Sample(rows =>
        {
            string file = string.Join(',', CsvColumns.All.Select(CsvColumns.Name)) + "\n"
                + string.Join(
                    '\n', rows.Select(cells => string.Join(',', cells.Select(text => "\"" + text.Replace("\"", "\"\"") + "\"")))) + "\n";
            CsvLogContents contents = Files.Read(file);
            Assert.True(contents.Rows.Count + contents.RefusedRows <= rows.Length);
            CsvAssembly.Assemble(contents, KnownLog.Fresh, Files.Options);
        }, iter: 500);
    }

    public static TheoryData<string> Encodings => ["utf-8", "utf-8 with mark", "utf-16", "utf-16BE", "utf-16 without mark", "utf-32"];

    [Theory]
    [MemberData(nameof(Encodings))]
    public void Every_unicode_encoding_is_told_from_the_first_bytes(string name)
    {
        Encoding encoding = name switch
        {
            "utf-8 with mark" => new UTF8Encoding(true),
            "utf-8" => new UTF8Encoding(false),
            "utf-16 without mark" => new UnicodeEncoding(false, false),
            _ => Encoding.GetEncoding(name),
        };
        CsvRow row = Assert.Single(Files.Read(Files.Rows(GoodRow.Replace("Ilse Maro", "Zoë 🛶").Replace("49.75", "49¾")), encoding).Rows);
        Assert.Equal(("Zoë 🛶", Length.FromInches(49.75)), (row.Paddler, row.Piece!.Length));
    }

    [Fact]
    public void A_row_with_bytes_of_another_encoding_is_refused_and_the_others_read()
    {
        byte[] latin = Encoding.Latin1.GetBytes(Files.Rows(GoodRow, GoodRow.Replace("Ilse Maro", "Zoë")));
        CsvLogContents contents = CsvLog.Read(new MemoryStream(latin), Files.Options);
        Assert.Equal((1, 1), (contents.Rows.Count, contents.RefusedRows));
        Assert.Contains(contents.Problems, problem => problem is { Line: 3, Column: null }
            && problem.Reason.Contains("CSV UTF-8", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("date;hull;length_in;distance_km;time_s;effort;stroke_rate\n2026-05-01;OC1;49,75;1,5;332,4;6,5;58,5")]
    [InlineData("date\thull\tlength_in\tdistance_km\ttime_s\teffort\tstroke_rate\n2026-05-01\tOC1\t49.75\t1.5\t332.4\t6.5\t58.5")]
    [InlineData("sep=;\ndate;hull;length_in;distance_km;time_s;effort;stroke_rate\n2026-05-01;OC1;49,75;1,5;332,4;6,5;58,5")]
    public void Semicolons_with_decimal_commas_and_tabs_are_told_from_the_header(string file)
    {
        CsvLogContents contents = Files.Read(file);
        Assert.Empty(contents.Problems);
        CsvPiece piece = Assert.Single(contents.Rows).Piece!;
        Assert.Equal(
            (Length.FromInches(49.75), Distance.FromMetres(1500), PieceTime.FromSeconds(332.4), Effort.FromPoints(6.5),
                StrokeRate.FromStrokesPerMinute(58.5)),
            (piece.Length, piece.Distance, piece.Time, piece.Effort, piece.StrokeRate));
    }

    [Theory]
    [InlineData("49.75,126.365", null)]
    [InlineData("49.75,", null)]
    [InlineData(",126.4", null)]
    [InlineData("49.75,128", "length_in")]
    [InlineData(",", "length_in")]
    public void Lengths_in_two_units_must_agree(string lengths, string? wrong) =>
        Assert.Equal(
            wrong, Files.Read(
            $"date,hull,length_in,length_cm,distance_m,time\n2026-05-01,OC1,{lengths},1000,5:32\n").Problems.SingleOrDefault()?.Column);

    [Theory]
    [InlineData("Bram \"Big\" Okello", "stands inside a cell")]
    [InlineData("\"Bram\" Okello", "stands inside a cell")]
    public void Quotation_marks_out_of_place_are_said(string paddler, string says) =>
        Assert.Contains(says, Assert.Single(Files.Read(Files.Rows(GoodRow.Replace("Ilse Maro", paddler))).Problems).Reason);

    [Fact]
    public void A_cell_that_does_not_close_says_which_lines_ran_together()
    {
        CsvLogContents contents = Files.Read(Files.Rows(GoodRow, "\"Tova Lind" + GoodRow[9..], GoodRow.Replace("05-01", "05-03")));
        Assert.True(Assert.Single(contents.Problems) is { Line: 3 } problem
            && problem.Reason.Contains("so lines 3 to ", StringComparison.Ordinal));
        Assert.Single(contents.Rows);
    }

    [Fact]
    public void A_cell_beyond_measure_stops_the_reading_with_its_line() =>
        Assert.Contains(
            "Line 3",
            Assert.Throws<InvalidValueException>(() => Files.Read(Files.Rows(GoodRow, GoodRow + "\"" + new string('x', 200_000)))).Message);

    [Fact]
    public void A_separator_too_many_is_said() =>
        Assert.Contains("14 cells and the header 12", Assert.Single(Files.Read(Files.Rows(GoodRow + ",flat, calm")).Problems).Reason);

    [Fact]
    public void Unknown_columns_are_named_and_their_cells_kept_in_the_notes()
    {
        CsvLogContents contents = Files.Read(Files.Header + ",gloves,tide\n" + GoodRow + "windy,blue,\n");
        Assert.Contains("gloves, tide", Assert.Single(contents.Warnings));
        Assert.Equal("windy; gloves: blue", Assert.Single(contents.Rows).Piece!.Notes);
    }

    [Fact]
    public void Problems_are_listed_up_to_a_limit_and_counted_beyond()
    {
        CsvLogContents contents = Files.Read(Files.Rows([.. Enumerable.Repeat(GoodRow.Replace("5:32", "late"), 1000)]));
        Assert.Equal((CsvLogContents.MostListed, 1000), (contents.Problems.Count, contents.RefusedRows));
    }

    [Fact]
    public void A_file_of_200_MB_is_refused_without_being_read_into_memory()
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        using var known = new Endless(200_000_000, canSeek: true, notes: 2000);
        using var streamed = new Endless(200_000_000, canSeek: false, notes: 2000);
        Assert.Contains("larger than 100 MB", Assert.Throws<InvalidValueException>(() => CsvLog.Read(known, Files.Options)).Message);
        Assert.Contains("larger than 100 MB", Assert.Throws<InvalidValueException>(() => CsvLog.Read(streamed, Files.Options)).Message);
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 2_000_000_000);
        Assert.Equal(0, known.Given);
    }

    [Theory]
    [InlineData('y')]
    [InlineData(',')]
    [InlineData('"')]
    public void One_endless_line_is_refused_before_it_fills_memory(char filling)
    {
        using var file = new MemoryStream(
            [.. Encoding.ASCII.GetBytes(Files.Header + "\n"), .. Enumerable.Repeat((byte)filling, 20_000_000)]);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Throws<InvalidValueException>(() => CsvLog.Read(file, Files.Options));
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 500_000_000);
    }

    [Fact]
    public void A_time_of_day_after_the_date_is_the_start_of_the_outing()
    {
        CsvLogContents contents = Files.Read(
            Files.Rows(GoodRow.Replace("05-01", "05-01T07:30"), GoodRow.Replace("05-01", "05-01T07:30Z"),
            GoodRow.Replace("05-01", "05-01 25:00")));
        Assert.Equal(new TimeOnly(7, 30), Assert.Single(contents.Rows).StartTime);
        Assert.Equal([("date", 3), ("date", 4)], contents.Problems.Select(problem => (problem.Column!, problem.Line)));
    }

    [Fact]
    public void More_rows_than_a_logbook_holds_are_refused()
    {
        using var file = new Endless(90_000_000, canSeek: true, notes: 0);
        Assert.Contains("250,000 rows", Assert.Throws<InvalidValueException>(() => CsvLog.Read(file, Files.Options)).Message);
    }

    [Fact]
    public void Reading_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => CsvLog.Read(Files.Bytes(Files.Rows(GoodRow)), Files.Options, stop: stop.Token));
    }
}
