using System.Globalization;
using PlantWatch.Server.Commands;

namespace PlantWatch.Server.Tests.Commands;

/// <summary>Tables in, tables out, as somebody types the command.</summary>
public sealed class TableCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("plantwatch-tables-").FullName;
    private readonly StringWriter _output = new();
    private readonly StringWriter _complaints = new();

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_table_of_waters_is_balanced_with_every_column_that_was_asked_for()
    {
        // Row G001 of 200 waters computed with USGS PHREEQC 3.8.9: SI -0.6363, pHs 7.4363 and 7.4405, CCPP -33.708.
        var rows = Balanced("id,pH,T_C,TA_mgL_CaCO3,CH_mgL_CaCO3,TDS_mgL\nG001,6.8,27,100,250,1000\n", expected: 0);
        var row = Assert.Single(rows);
        Assert.Equal(-0.6363, Number(row["SI_calcite"]), 0.001);
        Assert.Equal(7.4363, Number(row["pHs_Langelier"]), 0.001);
        Assert.Equal(7.4405, Number(row["pHs_fixedAlkCa"]), 0.001);
        Assert.Equal(-33.708, Number(row["CCPP_mgL_CaCO3"]), 0.05);
        Assert.Equal(-0.6425, Number(row["LSI_table"]), 0.001);
        Assert.Equal(6.8 - 7.5522, Number(row["LSI_closed"]), 0.001);
        Assert.Equal("Rows worked out: 1, not: 0; written to " + Path.Combine(_folder, "out.csv"), _output.ToString().Trim());
    }

    [Fact]
    public void A_table_of_doses_says_what_the_water_becomes()
    {
        // Rows D001 and D004 of 96 doses computed with USGS PHREEQC 3.8.9.
        var rows = Run("dose", "id,pH0,T_C,TA0_mgL_CaCO3,CH_mgL_CaCO3,TDS_mgL,reagent,dose_mmol_per_kgw\nD001,7.8,27,100,250,1000,HCl,0.1\nD004,7.8,27,100,250,1000,NaHSO4,0.2\n", 0);
        Assert.Equal(7.3956, Number(rows[0]["pH1"]), 0.005);
        Assert.Equal(95.00, Number(rows[0]["TA1_mgL_CaCO3"]), 0.02);
        Assert.Equal(-0.0666, Number(rows[0]["SI1_calcite"]), 0.005);
        Assert.Equal(7.1528, Number(rows[1]["pH1"]), 0.005);
    }

    [Fact]
    public void A_bad_row_is_named_with_its_line_and_the_rest_is_still_worked_out()
    {
        const string table = """
            id,pH,T_C,TA_mgL_CaCO3,CH_mgL_CaCO3,TDS_mgL
            good,7.5,27,100,250,1000
            words,seven,27,100,250,1000
            blank,7.5,,100,250,1000
            sour,2.0,27,100,250,1000
            impossible,9.9,27,1,250,1000
            short,7.5,27
            infinite,7.5,27,100,1e400,1000
            soft,7.5,27,100,2,1000
            "quoted, and good",7.2,27,100,250,1000

            """;
        var rows = Balanced(table, expected: 1);
        Assert.Equal(9, rows.Count);
        Assert.Equal(["good", "soft", "quoted, and good"], rows.Where(r => r["SI_calcite"].Length > 0).Select(r => r["id"]));
        var complaints = _complaints.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(6, complaints.Length);
        Assert.StartsWith("line 3, id words: pH \"seven\" is no number", complaints[0], StringComparison.Ordinal);
        Assert.StartsWith("line 4, id blank: T_C is missing", complaints[1], StringComparison.Ordinal);
        Assert.StartsWith("line 5, id sour: pH 2 is outside 4.5 to 10.5", complaints[2], StringComparison.Ordinal);
        Assert.Contains("contradict each other", complaints[3], StringComparison.Ordinal);
        Assert.Contains("LSI_table: Calcium hardness is 2", rows.Single(r => r["id"] == "soft")["remark"], StringComparison.Ordinal);
        Assert.Empty(rows.Single(r => r["id"] == "soft")["LSI_table"]);
    }

    [Fact]
    public void A_table_without_its_columns_is_refused_and_nothing_is_written()
    {
        Run("balance", "id,pH\na,7\n", 2);
        Assert.Contains("lacks the columns T_C, TA_mgL_CaCO3, CH_mgL_CaCO3, TDS_mgL", _complaints.ToString(), StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(_folder, "out.csv")));
    }

    [Fact]
    public void Columns_in_another_order_and_a_byte_order_mark_are_no_obstacle_and_other_columns_are_kept()
    {
        var row = Assert.Single(Balanced("\uFEFFTDS_mgL,site,pH,CH_mgL_CaCO3,T_C,id,TA_mgL_CaCO3\r\n1000,north,7.5,250,27,G008,100\r\n", expected: 0));
        Assert.Equal("north", row["site"]);
        Assert.Equal(0.0587, Number(row["SI_calcite"]), 0.001);
    }

    [Fact]
    public void A_table_of_an_old_machine_with_bare_carriage_returns_is_read() =>
        Assert.Equal(0.0587, Number(Assert.Single(Balanced("id,pH,T_C,TA_mgL_CaCO3,CH_mgL_CaCO3,TDS_mgL\rG008,7.5,27,100,250,1000\r", expected: 0))["SI_calcite"]), 0.001);

    [Fact]
    public void A_column_that_stands_twice_is_refused_since_nobody_knows_which_is_meant()
    {
        Run("balance", "id,pH,pH,T_C,TA_mgL_CaCO3,CH_mgL_CaCO3,TDS_mgL\na,7.4,8.4,27,100,250,1000\n", 2);
        Assert.Contains("has the column pH more than once", _complaints.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_link_to_the_input_is_the_input_and_is_not_written_over()
    {
        const string table = "id,pH,T_C,TA_mgL_CaCO3,CH_mgL_CaCO3,TDS_mgL\na,7.4,27,100,250,1000\n";
        var (from, to) = (Path.Combine(_folder, "in.csv"), Path.Combine(_folder, "link.csv"));
        File.WriteAllText(from, table);
        File.CreateSymbolicLink(to, from);
        Assert.Equal(2, CommandLine.Run(["balance", from, "--out", to], _output, _complaints));
        Assert.Equal(table, File.ReadAllText(from));
        Assert.Equal(2, CommandLine.Run(["balance", "", "--out", to], _output, _complaints));
    }

    [Fact]
    public void A_dose_that_leaves_the_range_of_the_model_is_an_answer_and_no_number()
    {
        var row = Assert.Single(Run("dose", "id,pH0,T_C,TA0_mgL_CaCO3,CH_mgL_CaCO3,TDS_mgL,reagent,dose_mmol_per_kgw\nx,7.8,27,100,250,1000,HCl,100\n", 1));
        Assert.Empty(row["pH1"]);
        Assert.Contains("the dose takes pH to 1.1, outside 4.5 to 10.5", row["remark"], StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_reagent_is_named_with_those_that_are_known()
    {
        Run("dose", "id,pH0,T_C,TA0_mgL_CaCO3,CH_mgL_CaCO3,TDS_mgL,reagent,dose_mmol_per_kgw\nx,7.8,27,100,250,1000,vinegar,0.1\n", 1);
        Assert.Contains("reagent \"vinegar\" is not one of HCl, H2SO4", _complaints.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("balance")]
    [InlineData("balance in.csv")]
    [InlineData("polish in.csv --out out.csv")]
    public void A_command_that_is_not_understood_shows_what_can_be_asked(string line)
    {
        Assert.Equal(2, CommandLine.Run(line.Split(' '), _output, _complaints));
        Assert.Contains("balance IN.csv --out OUT.csv", _complaints.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there_or_is_its_own_answer_is_refused()
    {
        Assert.Equal(2, CommandLine.Run(["balance", Path.Combine(_folder, "none.csv"), "--out", Path.Combine(_folder, "out.csv")], _output, _complaints));
        Assert.Equal(2, CommandLine.Run(["balance", Path.Combine(_folder, "a.csv"), "--out", Path.Combine(_folder, "a.csv")], _output, _complaints));
    }

    private List<Dictionary<string, string>> Balanced(string table, int expected) => Run("balance", table, expected);

    private List<Dictionary<string, string>> Run(string command, string table, int expected)
    {
        var (from, to) = (Path.Combine(_folder, "in.csv"), Path.Combine(_folder, "out.csv"));
        File.WriteAllText(from, table);
        Assert.Equal(expected, CommandLine.Run([command, from, "--out", to], _output, _complaints));
        if (!File.Exists(to)) return [];
        using var reader = new CsvHelper.CsvReader(new StreamReader(to), CultureInfo.InvariantCulture);
        return [.. reader.GetRecords<dynamic>().Select(r => ((IDictionary<string, object>)r).ToDictionary(p => p.Key, p => (string)p.Value))];
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
