// How rows become objects is written by Dapper's generator when the program is built, not made when it runs: that was a fifth of a start.
[module: Dapper.DapperAot]
[module: Dapper.BindTupleByName(false)]
